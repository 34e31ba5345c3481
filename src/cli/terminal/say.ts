import { writeSync } from 'node:fs';
import { clean } from './clean.ts';

/** One line of words to people, on standard error. */
export function say(text: string): void {
  try {
    writeSync(2, `${clean(text)}\n`);
  } catch {
    // Nobody listens any more; that must not undo the work.
  }
}
