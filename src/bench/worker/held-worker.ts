import { proxy, type Remote, releaseProxy, wrap } from 'comlink';
import type { Progress } from '#base/progress.ts';
import { sendInPieces } from './in-pieces.ts';
import type { Jobs } from './jobs.ts';

sendInPieces();

/** Rejects a job that was called off. */
export class CalledOff extends Error {
  override readonly name = 'CalledOff';
}

/** What a job is given, without the progress that it reports. */
export type JobGiven<Name extends keyof Jobs> =
  Parameters<Jobs[Name]> extends [...infer Given, Progress] ? Given : never;

export type JobMade<Name extends keyof Jobs> = Awaited<ReturnType<Jobs[Name]>>;

/** A worker that is kept for several jobs. Closing it calls off whatever it is at. */
export class HeldWorker {
  readonly #worker: Worker;
  readonly #remote: Remote<Jobs>;
  readonly #ended: Promise<never>;
  #end: (why: Error) => void = () => {};
  #closed = false;

  constructor() {
    this.#worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    this.#remote = wrap<Jobs>(this.#worker);
    this.#ended = new Promise((_, reject) => {
      this.#end = reject;
    });
    // Closing it while it is at nothing is no fault.
    this.#ended.catch(() => {});
    this.#worker.addEventListener('error', ({ message }) => this.#end(new Error(message)), { once: true });
  }

  run<Name extends keyof Jobs>(
    name: Name,
    given: JobGiven<Name>,
    progress: Progress = () => {},
  ): Promise<JobMade<Name>> {
    const job = this.#remote[name] as unknown as (...words: unknown[]) => Promise<JobMade<Name>>;
    return Promise.race([job(...given, proxy(progress)), this.#ended]);
  }

  /** A second time it does nothing: who calls a job off closes it, and so does who waits for it. */
  close(): void {
    if (this.#closed) return;
    this.#closed = true;
    this.#end(new CalledOff());
    this.#remote[releaseProxy]();
    this.#worker.terminate();
  }
}
