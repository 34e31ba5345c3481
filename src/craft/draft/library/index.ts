import { breakwater } from './breakwater.ts';
import { capstanFan } from './capstan-fan.ts';
import { compass } from './compass.ts';
import type { LibraryEntry } from './entry.ts';
import { estuary } from './estuary.ts';
import { flowerAndLeaves } from './flower-and-leaves.ts';
import { gangwayCorner } from './gangway-corner.ts';
import { harbourHeart } from './harbour-heart.ts';
import { harbourLights } from './harbour-lights.ts';
import { headlandCorner } from './headland-corner.ts';
import { lanternFrame } from './lantern-frame.ts';
import { plainStrip } from './plain-strip.ts';
import { ropewalk } from './ropewalk.ts';
import { seaRose } from './sea-rose.ts';
import { signalCollar } from './signal-collar.ts';
import { tidalFlower } from './tidal-flower.ts';
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
  gangwayCorner,
  headlandCorner,
  lanternFrame,
  ropewalk,
  signalCollar,
  compass,
  estuary,
  tidalFlower,
  flowerAndLeaves,
  harbourHeart,
  windowSampler,
];
