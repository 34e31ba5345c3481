import type { Progress } from '#base/progress.ts';
import { nextTask } from '../parts/next-task.ts';
import { CalledOff, HeldWorker, type JobGiven, type JobMade } from './held-worker.ts';
import type { Jobs } from './jobs.ts';

/**
 * Runs one job in a worker of its own, so that the page stays free and the job can be stopped at any moment.
 * Rejects with `CalledOff` where `signal` stops it.
 */
export async function runJob<Name extends keyof Jobs>(
  name: Name,
  given: JobGiven<Name>,
  { progress = () => {}, signal }: { readonly progress?: Progress; readonly signal?: AbortSignal } = {},
): Promise<JobMade<Name>> {
  // To hand a large pattern over takes time of its own, which is not added to that of the gesture that asked for it.
  await nextTask();
  if (signal?.aborted) throw new CalledOff();
  const worker = new HeldWorker();
  const stop = () => worker.close();
  signal?.addEventListener('abort', stop, { once: true });
  try {
    return await worker.run(name, given, progress);
  } finally {
    signal?.removeEventListener('abort', stop);
    worker.close();
  }
}
