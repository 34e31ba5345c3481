import type { LibraryEntry } from './entry.ts';
import { plainStrip } from './plain-strip.ts';

/** Every recipe of the library, in the order in which the gallery shows them. Each has a file of its own. */
export const library: readonly LibraryEntry[] = [plainStrip];
