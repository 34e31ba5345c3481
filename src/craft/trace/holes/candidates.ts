import { darkSpots } from '#base/picture/dark-spots.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { type Ground, groundAt, groundOf, hasInk } from '#base/picture/ground.ts';
import { inkRegions, type Region } from '#base/picture/regions.ts';
import { rimVotes } from '#base/picture/rim-votes.ts';
import { grown, shrink, shrunk } from '#base/picture/shrink.ts';
import type { Progress } from '#base/progress.ts';
import { readRim } from './rim.ts';
import { type Traits, traitsOf } from './traits.ts';

/** A place that may be a dot, measured at full resolution. */
export interface Candidate {
  readonly column: number;
  readonly row: number;
  readonly diameter: number;
  readonly traits: Traits;
  /** The patch of ink it lies in, or -1 on bare ground. */
  readonly region: number;
  /** Longer side of that patch in dot diameters; 0 on bare ground. */
  readonly long: number;
}

export interface Survey {
  readonly candidates: readonly Candidate[];
  /** Patches of ink, in pixels of the picture shrunk by `factor`. */
  readonly regions: readonly Region[];
  readonly factor: number;
}

/** Looking for dots needs about this many pixels across each; finer pictures are shrunk for it. */
const ENOUGH = 5;
/** Measuring them gains nothing from more pixels than this across each. */
const PLENTY = 12;
/** A dot with less rim than this to be seen, and with less darkness standing out, is drowned. */
const LEAST_RIM = 0.22;
const LEAST_BULGE = 0.25;

/** All places that look at all like a dot of the given diameter (pixels). */
export function survey(picture: GreyPicture, diameter: number, progress: Progress): Survey {
  const factor = Math.max(1, Math.floor(diameter / ENOUGH));
  const small = shrink(picture, factor);
  const ground = groundOf(small);
  const dot = diameter / factor;
  progress('look for dots', 0.3);
  const places = startingPlaces(small, ground, dot);
  progress('look for dots', 0.6);
  const { regions, at } = inkRegions(small, ground, 0.5);
  const detail = Math.max(1, Math.floor(diameter / PLENTY));
  const sharp = shrink(picture, detail);
  const candidates: Candidate[] = [];
  for (const place of places) {
    const level = groundAt(ground, ground.level, small, place.column, place.row);
    const depth = groundAt(ground, ground.depth, small, place.column, place.row);
    const start = {
      column: shrunk(grown(place.column, factor), detail),
      row: shrunk(grown(place.row, factor), detail),
    };
    const rim = readRim(sharp, start, diameter / 2 / detail, level, depth);
    const column = grown(rim.column, detail);
    const row = grown(rim.row, detail);
    const region = at(Math.round(shrunk(column, factor)), Math.round(shrunk(row, factor)));
    const traits = traitsOf(rim, diameter / 2 / detail, depth);
    const long = region < 0 ? 0 : longSide(regions[region]!) / dot;
    candidates.push({ column, row, diameter: 2 * rim.radius * detail, traits, region, long });
  }
  return { candidates, regions, factor };
}

const longSide = (region: Region): number =>
  Math.max(region.right - region.left, region.bottom - region.top) + 1;

/** Rims that point at a centre, and dark middles that have no rim to speak of. */
function startingPlaces(
  picture: GreyPicture,
  ground: Ground,
  dot: number,
): { column: number; row: number }[] {
  if (!hasInk(ground)) return [];
  const rims = rimVotes(picture, ground, dot / 2, LEAST_RIM);
  const taken = new Set<number>();
  const cell = (column: number, row: number): number =>
    Math.round(row / (0.4 * dot)) * 65536 + Math.round(column / (0.4 * dot));
  for (const { column, row } of rims) taken.add(cell(column, row));
  const isNew = ({ column, row }: { column: number; row: number }): boolean => {
    const at = cell(column, row);
    for (const step of [0, -1, 1, -65536, 65536]) if (taken.has(at + step)) return false;
    return true;
  };
  return [...rims, ...darkSpots(picture, ground, dot, LEAST_BULGE).filter(isNew)];
}
