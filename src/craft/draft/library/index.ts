import type { LibraryEntry } from './entry.ts';
import { flowerAndLeaves } from './flower-and-leaves.ts';
import { harbourHeart } from './harbour-heart.ts';
import { plainStrip } from './plain-strip.ts';
import { windowSampler } from './window-sampler.ts';

/** Every recipe of the library, in the order in which the gallery shows them. Each has a file of its own. */
export const library: readonly LibraryEntry[] = [plainStrip, flowerAndLeaves, harbourHeart, windowSampler];
