import type { Point } from '#base/geometry/point.ts';
import { type Field, pinsWithin } from './field.ts';
import { findLattices } from './lattices.ts';
import { type GrownPolar, growPolar } from './polar-grow.ts';
import { type KnownRound, seedPolar } from './polar-seed.ts';

/**
 * The polar lattices of a pattern: in each piece of it that hangs together one is sought, round the centres that are
 * known and else round the piece's middle.
 */
export function findPolars(
  field: Field,
  isFree: (pin: number) => boolean,
  known: readonly KnownRound[],
): GrownPolar[] {
  return pieces(field, isFree).flatMap((pins) => {
    if (pins.length < LEAST_PIECE) return [];
    const told = knownPolars(field, pins, known);
    if (told.length > 0) return told;
    const grown = sought(field, pins);
    return grown === null || isRatherGround(field, grown, pins) ? [] : [grown];
  });
}

/** The finest first: half the rings of a lattice of many sectors would fit one of half as many. */
function knownPolars(field: Field, pins: readonly number[], known: readonly KnownRound[]): GrownPolar[] {
  const found: GrownPolar[] = [];
  let left = pins;
  for (const round of known.toSorted((one, other) => other.sectors - one.sectors)) {
    const grown = growPolar(field, round, left);
    // One round line in a lattice has no rings round it but by chance, and those are far less true than it is.
    if (grown === null || grown.sigma > Math.max(LOOSER * round.sigma, NO_HAND * field.spacing)) continue;
    if (isRatherGround(field, grown, pins)) continue;
    found.push(grown);
    left = left.filter((pin) => !grown.nodeOf.has(pin));
  }
  return found;
}

/** How much less true the rings round a known line may be than the line, and how true is true enough (spacings). */
const LOOSER = 4;
const NO_HAND = 0.01;

function sought(field: Field, pins: readonly number[]): GrownPolar | null {
  const places = pins.map((pin) => field.pins[pin]!);
  const seed = seedPolar(places, middleOf(field, pins), field.spacing);
  return seed === null ? null : growPolar(field, seed, pins);
}

/**
 * Whether straight ground holds most of the pins far more closely. Round the corner of a fan its pins and the ground's
 * own make something like rings, and a loose enough polar lattice takes them all in.
 */
function isRatherGround(field: Field, { nodeOf, sigma }: GrownPolar, pins: readonly number[]): boolean {
  const own = new Set(pins);
  const closer = findLattices(field, (pin) => own.has(pin)).filter(
    (lattice) => lattice.sigma < CLOSER * sigma,
  );
  const held = closer.reduce(
    (sum, lattice) => sum + [...lattice.nodeOf.keys()].filter((pin) => nodeOf.has(pin)).length,
    0,
  );
  return held > MOST_HELD * nodeOf.size;
}

/** Jitter of pins on a lattice against that on rings, under which the lattice is the truer of the two. */
const CLOSER = 0.5;
const MOST_HELD = 0.5;

const LEAST_PIECE = 40;
/** Pins farther apart than this many spacings hang together only through others. */
const REACH = 5;

function pieces(field: Field, isFree: (pin: number) => boolean): number[][] {
  const seen = new Uint8Array(field.pins.length);
  const found: number[][] = [];
  for (let start = 0; start < field.pins.length; start++) {
    if (seen[start] !== 0 || !isFree(start)) continue;
    const piece = [start];
    seen[start] = 1;
    for (const pin of piece) {
      for (const other of pinsWithin(field, field.pins[pin]!, REACH * field.spacing)) {
        if (seen[other] !== 0 || !isFree(other)) continue;
        seen[other] = 1;
        piece.push(other);
      }
    }
    found.push(piece);
  }
  return found;
}

function middleOf(field: Field, pins: readonly number[]): Point {
  let [x, y] = [0, 0];
  for (const pin of pins) {
    x += field.pins[pin]!.x / pins.length;
    y += field.pins[pin]!.y / pins.length;
  }
  return { x, y };
}
