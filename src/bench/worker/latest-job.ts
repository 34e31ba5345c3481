import { CalledOff, HeldWorker, type JobGiven, type JobMade } from './held-worker.ts';
import type { Jobs } from './jobs.ts';

/** A wish that has waited this long for the one before is worth a fresh worker, ms. */
const PATIENCE = 2000;

/**
 * Does a job again and again while a person changes what it is given: one at a time, and always for the newest wish.
 * Those in between are passed over.
 */
export class LatestJob<Name extends keyof Jobs> {
  readonly #name: Name;
  #worker: HeldWorker | null = null;
  #newest = 0;
  #stops = 0;
  #begun = 0;
  #running: Promise<unknown> | null = null;
  /** Settled once the worker has what it works with: no wish is to blame for how long that takes. */
  #loaded: Promise<void> = Promise.resolve();

  constructor(name: Name) {
    this.#name = name;
  }

  /** What the job made, or null where the wish was passed over or called off. */
  async ask(...given: JobGiven<Name>): Promise<JobMade<Name> | null> {
    const number = ++this.#newest;
    const stops = this.#stops;
    while (this.#running) {
      await this.#idle();
      if (number !== this.#newest) return null;
    }
    this.#begun = performance.now();
    const worker = this.#held();
    const job = worker.run(this.#name, given);
    const running = job.then(
      () => {},
      () => {},
    );
    this.#running = running;
    try {
      const made = await job;
      return stops === this.#stops ? made : null;
    } catch (error) {
      if (error instanceof CalledOff) return null;
      if (this.#worker === worker) this.#drop();
      throw error;
    } finally {
      if (this.#running === running) this.#running = null;
    }
  }

  /** Gets a worker ready, so that the first wish need not wait for it. */
  warm(): void {
    this.#held();
  }

  #held(): HeldWorker {
    if (this.#worker) return this.#worker;
    const worker = new HeldWorker();
    this.#worker = worker;
    this.#loaded = worker.run('load', []).then(
      () => {
        this.#begun = performance.now();
      },
      () => {},
    );
    return worker;
  }

  /** Forgets every wish. */
  stop(): void {
    this.#newest++;
    this.#stops++;
    if (this.#running) this.#drop();
  }

  /** Forgets every wish, and lets the worker go. */
  close(): void {
    this.stop();
    this.#drop();
  }

  /** Waits for the job that runs; one that takes too long is called off. */
  async #idle(): Promise<void> {
    await Promise.race([this.#running, this.#loaded]);
    const rest = Math.max(0, this.#begun + PATIENCE - performance.now());
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<'late'>((resolve) => {
      timer = setTimeout(() => resolve('late'), rest);
    });
    const first = await Promise.race([this.#running, late]);
    clearTimeout(timer);
    if (first === 'late') this.#drop();
  }

  #drop(): void {
    this.#worker?.close();
    this.#worker = null;
    this.#running = null;
  }
}
