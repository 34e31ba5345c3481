import { useCallback, useEffect, useRef, useState } from 'react';
import { CalledOff, type JobGiven, type JobMade } from './held-worker.ts';
import type { Jobs } from './jobs.ts';
import { runJob } from './run.ts';

/** A job as a panel sees it: not begun, under way, done, or broken by a fault of our own. */
export type JobState<Made> =
  | { readonly at: 'rest' }
  | { readonly at: 'work'; readonly stage: string; readonly share: number; readonly cancel: () => void }
  | { readonly at: 'done'; readonly made: Made }
  | { readonly at: 'broken'; readonly why: string };

/**
 * Runs a job when it is asked for, one at a time: asking again calls the one before off, and so does leaving the panel.
 * Resolves with what was made, or with null where it was called off or broke.
 */
export function useJob<Name extends keyof Jobs>(
  name: Name,
): readonly [JobState<JobMade<Name>>, (...given: JobGiven<Name>) => Promise<JobMade<Name> | null>] {
  const [state, setState] = useState<JobState<JobMade<Name>>>({ at: 'rest' });
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);
  const run = useCallback(
    async (...given: JobGiven<Name>) => {
      running.current?.abort();
      const stop = new AbortController();
      running.current = stop;
      // What is made at the very moment of stopping is let go too, so that the panel must not wait for it.
      const cancel = () => {
        stop.abort();
        if (running.current === stop) setState({ at: 'rest' });
      };
      const tell = (stage: string, share: number) => {
        // Progress comes on a way of its own, and may come after the job's end.
        if (running.current === stop && !stop.signal.aborted) setState({ at: 'work', stage, share, cancel });
      };
      tell('', 0);
      try {
        const made: JobMade<Name> = await runJob(name, given, { progress: tell, signal: stop.signal });
        if (stop.signal.aborted) return null;
        running.current = null;
        setState({ at: 'done', made });
        return made;
      } catch (error) {
        if (running.current !== stop) return null;
        running.current = null;
        setState(error instanceof CalledOff ? { at: 'rest' } : { at: 'broken', why: String(error) });
        return null;
      }
    },
    [name],
  );
  return [state, run];
}
