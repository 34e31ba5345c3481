import { writeSync } from 'node:fs';
import type { Progress } from '#base/progress.ts';

/** Work that is done sooner than this says nothing, ms. */
const PATIENCE = 1000;

/** A line is drawn anew at most this often, ms. */
const PACE = 100;

/** One line that says how far the work is, on a terminal only; `clear` takes it away. */
export interface ProgressLine {
  readonly progress: Progress;
  readonly clear: () => void;
}

export function progressLine(): ProgressLine {
  if (!process.stderr.isTTY) return { progress: () => {}, clear: () => {} };
  const begun = performance.now();
  let drawn = 0;
  const write = (text: string) => {
    try {
      // The work keeps the event loop busy, so that a stream would show nothing until it is over.
      writeSync(2, text);
    } catch {
      drawn = Number.POSITIVE_INFINITY;
    }
  };
  return {
    progress: (stage, share) => {
      const now = performance.now();
      if (now - begun < PATIENCE || now - drawn < PACE) return;
      drawn = now;
      write(`\r\x1b[K${stage} … ${Math.round(100 * Math.min(1, Math.max(0, share)))} %`);
    },
    clear: () => {
      if (drawn > 0 && Number.isFinite(drawn)) write('\r\x1b[K');
    },
  };
}
