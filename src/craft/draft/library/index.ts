import { breakwater } from './breakwater.ts';
import { capstanFan } from './capstan-fan.ts';
import type { LibraryEntry } from './entry.ts';
import { flowerAndLeaves } from './flower-and-leaves.ts';
import { harbourHeart } from './harbour-heart.ts';
import { harbourLights } from './harbour-lights.ts';
import { plainStrip } from './plain-strip.ts';
import { seaRose } from './sea-rose.ts';
import { tideline } from './tideline.ts';
import { windowSampler } from './window-sampler.ts';

/** Every recipe of the library, in the order in which the gallery shows them. Each has a file of its own. */
export const library: readonly LibraryEntry[] = [
  plainStrip,
  capstanFan,
  breakwater,
  tideline,
  harbourLights,
  seaRose,
  flowerAndLeaves,
  harbourHeart,
  windowSampler,
];
