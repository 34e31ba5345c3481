import './policy.ts';
import { expose } from 'comlink';
import { sendInPieces } from './in-pieces.ts';
import type { Jobs } from './jobs.ts';

type Job = (...given: unknown[]) => unknown;

/** The job of that name. A first visit waits for a pattern to be opened, and only for what that needs. */
const jobOf = async (name: keyof Jobs): Promise<Job> =>
  (name === 'open' ? (await import('./open-job.ts')).open : (await import('./jobs.ts')).jobs[name]) as Job;

sendInPieces();
expose(
  new Proxy(
    {},
    {
      get:
        (_, name: keyof Jobs): Job =>
        async (...given) =>
          (await jobOf(name))(...(await Promise.all(given))),
    },
  ),
);
