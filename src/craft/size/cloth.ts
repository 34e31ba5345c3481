import { interlacing, mostHeight } from './take-up.ts';
import type { Thread } from './thread.ts';

/**
 * Cloth stitch as it is set up: pairs side by side as passives over a width, and a pin at each edge every so often,
 * to which the worker pair goes and comes back. Lengths are mm.
 */
export interface ClothSetting {
  /** Passive pairs in the width; a share of a pair where the width is that of one column. */
  readonly pairs: number;
  readonly width: number;
  /** From one pin to the next along either edge. */
  readonly pins: number;
}

/** How close a cloth comes out. */
export interface Cloth {
  /** Threads to the millimetre: the passives across the band, the workers along it. */
  readonly passivesPerMm: number;
  readonly workersPerMm: number;
  /** Share of the cloth's face that each set hides, and both together, with the threads as they wind on a ruler. */
  readonly cover: Cover;
  /** The same with the threads pulled tight. */
  readonly tightCover: Cover;
  /** Length used up by going over and under, beyond the straight way; null where so many threads cannot interlace. */
  readonly crimp: { readonly passives: number; readonly workers: number } | null;
  /** Grams to the square metre, with the crimp; null where that is. */
  readonly mass: number | null;
  readonly hand: ClothHand;
}

export interface Cover {
  readonly passives: number;
  readonly workers: number;
  readonly whole: number;
}

/**
 * How it feels: 'open' shows the pins' holes and much ground between threads, 'full' is close, 'crowded' has more
 * threads than lie side by side unpressed, 'impossible' more than stiff threads could interlace. The limit between
 * open, even and full is our own.
 */
export type ClothHand = 'open' | 'even' | 'full' | 'crowded' | 'impossible';

/**
 * The setting of cloth stitch on a lattice, as in a diamond or a zigzag whose edge pins are neighbours on the lattice:
 * each edge pin brings one pair, so that one pair lies in a column, and the worker goes to and fro once a row.
 */
export const latticeCloth = (column: number, row: number): ClothSetting => ({
  pairs: 1,
  width: column,
  pins: row,
});

/** The cloth that a setting gives with a thread, two to a pair, plain weave of every thread with every other. */
export function clothOf({ pairs, width, pins }: ClothSetting, thread: Thread): Cloth {
  const passivesPerMm = (2 * pairs) / width;
  // A pair to and a pair back for each pin of an edge.
  const workersPerMm = 4 / pins;
  const cover = coverOf(passivesPerMm, workersPerMm, thread.wrapped);
  const tightCover = coverOf(passivesPerMm, workersPerMm, thread.compact);
  const crimp = crimpOf(1 / workersPerMm, 1 / passivesPerMm, 2 * thread.compact);
  return {
    passivesPerMm,
    workersPerMm,
    cover,
    tightCover,
    crimp,
    mass: crimp
      ? clothMass(thread.tex, passivesPerMm, crimp.passives) +
        clothMass(thread.tex, workersPerMm, crimp.workers)
      : null,
    hand: crimp ? handOf(cover) : 'impossible',
  };
}

/**
 * The crimp of both sets, of threads whose diameters come to `sum`. Each takes half of the rise and fall, or as much
 * of its half as there is room for, and the other the rest.
 */
function crimpOf(alongPassives: number, alongWorkers: number, sum: number): Cloth['crimp'] {
  const room = mostHeight(alongPassives, sum);
  const height = Math.min(room, Math.max(sum / 2, sum - mostHeight(alongWorkers, sum)));
  const passives = interlacing(alongPassives, height, sum);
  const workers = interlacing(alongWorkers, sum - height, sum);
  return passives && workers ? { passives: passives.crimp, workers: workers.crimp } : null;
}

/** Fractional cover, F. T. Peirce (1937): each set hides diameter / spacing; where both cross, only once. */
export function coverOf(passivesPerMm: number, workersPerMm: number, diameter: number): Cover {
  const passives = Math.min(1, passivesPerMm * diameter);
  const workers = Math.min(1, workersPerMm * diameter);
  return { passives, workers, whole: passives + workers - passives * workers };
}

/** Grams to the square metre of one set of threads: each metre of cloth holds 1 + crimp of thread. */
export const clothMass = (tex: number, perMm: number, crimp: number): number => tex * perMm * (1 + crimp);

function handOf({ passives, workers, whole }: Cover): ClothHand {
  if (passives >= 1 || workers >= 1) return 'crowded';
  if (whole >= 0.9) return 'full';
  return whole < 0.65 ? 'open' : 'even';
}
