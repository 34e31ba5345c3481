import { proxy, releaseProxy, wrap } from 'comlink';
import type { Progress } from '#base/progress.ts';
import type { Jobs } from './jobs.ts';

/** Rejects a job that was called off. */
export class CalledOff extends Error {
  override readonly name = 'CalledOff';
}

/** What a job is given, without the progress that it reports. */
export type JobGiven<Name extends keyof Jobs> =
  Parameters<Jobs[Name]> extends [...infer Given, Progress] ? Given : never;

export type JobMade<Name extends keyof Jobs> = Awaited<ReturnType<Jobs[Name]>>;

/**
 * Runs one job in a worker of its own, so that the page stays free and the job can be stopped at any moment.
 * Rejects with `CalledOff` where `signal` stops it.
 */
export async function runJob<Name extends keyof Jobs>(
  name: Name,
  given: JobGiven<Name>,
  { progress = () => {}, signal }: { readonly progress?: Progress; readonly signal?: AbortSignal } = {},
): Promise<JobMade<Name>> {
  signal?.throwIfAborted();
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const remote = wrap<Jobs>(worker);
  const stopped = new Promise<never>((_, reject) => {
    signal?.addEventListener('abort', () => reject(new CalledOff(name)), { once: true });
    worker.addEventListener('error', (event) => reject(new Error(event.message)), { once: true });
  });
  try {
    const job = remote[name] as unknown as (...words: unknown[]) => Promise<JobMade<Name>>;
    return await Promise.race([job(...given, proxy(progress)), stopped]);
  } finally {
    remote[releaseProxy]();
    worker.terminate();
  }
}
