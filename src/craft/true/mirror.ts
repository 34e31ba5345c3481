import { quantile } from '#base/fit/robust.ts';
import { fitMirror, type MirrorFit, mirrored } from '#base/fit/symmetry.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { type Field, pinsWithin } from './field.ts';

/** A line in which the whole pattern mirrors itself. */
export interface TrueMirror {
  readonly through: Point;
  /** Of length 1. */
  readonly direction: Point;
  /** Pins that are images of each other; a pin on the line is its own. */
  readonly pairs: readonly (readonly [number, number])[];
  /** Pins without an image. */
  readonly alone: readonly number[];
  /** Standard deviation of a pin from its place, per coordinate, as the images show it. */
  readonly sigma: number;
}

type Axis = Pick<MirrorFit, 'through' | 'direction'>;

/**
 * The line in which a pattern mirrors itself; null where none is clear. It goes through the middle of all pins, so
 * that only its angle is sought: any two pins as far from the middle as each other vote for the line between them.
 * `features` are the pins that do not mirror in any row of the ground.
 */
export function findMirror(field: Field, features: ReadonlySet<number>, sigma: number): TrueMirror | null {
  if (features.size < LEAST_PINS) return null;
  const reach = Math.min(MOST_REACH * field.spacing, Math.max(REACH * sigma, LEAST_REACH * field.spacing));
  const some = sampleOf([...features]);
  const through = middleOf(field.indexed.map((pin) => field.pins[pin]!));
  let best: { axis: Axis; met: number } | null = null;
  for (const angle of likelyAngles(field, some, through, reach)) {
    const axis = settled(field, some, { through, direction: directionOf(angle) }, reach);
    const met = shareMet(field, some, axis, reach);
    if (best === null || met > best.met) best = { axis, met };
  }
  if (best === null) return null;
  const { axis } = best;
  const isClear =
    shareMet(field, [...features], axis, reach) >= LEAST_MET &&
    shareMet(field, sampleOf(field.indexed), axis, reach) >= LEAST_MET &&
    best.met > CLEARLY_MORE * byChance(field, some, axis, reach);
  if (!isClear) return null;
  const { pairs, alone } = partners(field, field.indexed, axis, reach);
  const fit = fitMirror(pairs.map(([p, q]) => [field.pins[p]!, field.pins[q]!]));
  if (fit === null) return null;
  // An image is off its pin by the jitter of both, in two coordinates: 4 sigma^2 in the mean.
  const own = Math.sqrt(fit.squares / (4 * pairs.length));
  return { through: fit.through, direction: fit.direction, pairs, alone, sigma: own };
}

/** Where two pins that mirror each other should stand: the first of them, midway to the image of the second. */
export function mirroredPlace(field: Field, mirror: Axis, pin: number, partner: number): Point {
  const own = field.pins[pin]!;
  const image = mirrored(mirror, field.pins[partner]!);
  return { x: (own.x + image.x) / 2, y: (own.y + image.y) / 2 };
}

/** Fewer pins than this mirror each other by chance. */
const LEAST_PINS = 12;
/** Of the pins off the line, the share that must meet their image. */
const LEAST_MET = 0.85;
/** How much oftener that must be than in lines at other angles. */
const CLEARLY_MORE = 1.6;
/** How far an image may lie from its pin: in standard deviations, and in parts of the spacing at least and at most. */
const REACH = 4.5;
const LEAST_REACH = 0.2;
const MOST_REACH = 0.35;
/** So many pins tell a good line from a bad one. */
const SAMPLE = 500;
const CANDIDATES = 16;
const ROUNDS = 4;

const directionOf = (angle: number): Point => ({ x: Math.cos(angle), y: Math.sin(angle) });

function sampleOf(pins: readonly number[]): readonly number[] {
  if (pins.length <= SAMPLE) return pins;
  const every = pins.length / SAMPLE;
  return Array.from({ length: SAMPLE }, (_, k) => pins[Math.floor(k * every)]!);
}

function middleOf(points: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  return { x, y };
}

/** Votes are counted by the half degree. */
const BINS = 360;
/** Pairs asked for each pin at most. */
const MOST_PAIRS = 120;

/** The angles of lines through the middle for which most pairs of pins vote, the most voted for first. */
function likelyAngles(field: Field, pins: readonly number[], middle: Point, reach: number): number[] {
  const polar = pins
    .map((pin) => {
      const { x, y } = field.pins[pin]!;
      return { radius: distance(field.pins[pin]!, middle), angle: Math.atan2(y - middle.y, x - middle.x) };
    })
    .filter(({ radius }) => radius > 2 * field.spacing)
    .sort((p, q) => p.radius - q.radius);
  const votes = new Float64Array(BINS);
  polar.forEach((one, k) => {
    for (let n = k + 1; n < Math.min(polar.length, k + 1 + MOST_PAIRS); n++) {
      const other = polar[n]!;
      if (other.radius - one.radius > reach) break;
      const turns = (one.angle + other.angle) / (2 * Math.PI);
      const bin = Math.floor((turns - Math.floor(turns)) * BINS) % BINS;
      votes[bin]! += 1;
    }
  });
  const wide = Array.from(votes, (own, bin) => ({
    bin,
    votes: own + votes[(bin + 1) % BINS]! + votes[(bin + BINS - 1) % BINS]!,
  }));
  return wide
    .sort((p, q) => q.votes - p.votes || p.bin - q.bin)
    .slice(0, CANDIDATES)
    .map(({ bin }) => ((bin + 0.5) * Math.PI) / BINS);
}

/** The line fitted to the pairs it makes, again and again; wide at first, as omitted pins shift the middle. */
function settled(field: Field, pins: readonly number[], from: Axis, reach: number): Axis {
  let axis = from;
  for (let round = 0; round < ROUNDS; round++) {
    const wide = round === 0 ? 2 * reach : reach;
    const { pairs } = partners(field, pins, axis, wide);
    const fit = fitMirror(pairs.map(([p, q]) => [field.pins[p]!, field.pins[q]!]));
    if (fit === null) return axis;
    axis = fit;
  }
  return axis;
}

interface Partners {
  readonly pairs: readonly (readonly [number, number])[];
  readonly alone: readonly number[];
}

/** Pins with the pin nearest to their image, where each is the other's; a pair counts once. */
function partners(field: Field, pins: readonly number[], axis: Axis, reach: number): Partners {
  const nearest = (pin: number): number | undefined => {
    const image = mirrored(axis, field.pins[pin]!);
    let best: number | undefined;
    let least = Infinity;
    for (const other of pinsWithin(field, image, reach)) {
      const off = distance(image, field.pins[other]!);
      if (off < least) [best, least] = [other, off];
    }
    return best;
  };
  const pairs: (readonly [number, number])[] = [];
  const alone: number[] = [];
  const seen = new Set<number>();
  for (const pin of pins) {
    if (seen.has(pin)) continue;
    const partner = nearest(pin);
    if (partner === undefined || (partner !== pin && nearest(partner) !== pin)) {
      alone.push(pin);
      continue;
    }
    pairs.push([pin, partner]);
    seen.add(partner);
  }
  return { pairs, alone };
}

/** Of the pins clearly off the line, the share that meets its image; 0 where hardly any is off it. */
function shareMet(field: Field, pins: readonly number[], axis: Axis, reach: number): number {
  const off = pins.filter(
    (pin) => distance(field.pins[pin]!, mirrored(axis, field.pins[pin]!)) > 2 * field.spacing,
  );
  if (off.length < Math.max(LEAST_PINS, pins.length / 2)) return 0;
  return 1 - partners(field, off, axis, reach).alone.length / off.length;
}

const OTHER_ANGLES = 15;

/** How often pins meet an image in lines at other angles: the upper quartile, as a pattern may have several mirrors. */
function byChance(
  field: Field,
  pins: readonly number[],
  { through, direction }: Axis,
  reach: number,
): number {
  const angle = Math.atan2(direction.y, direction.x);
  const shares = Array.from({ length: OTHER_ANGLES }, (_, k) => {
    const other = angle + (Math.PI * (k + 1)) / (OTHER_ANGLES + 1.37);
    return shareMet(field, pins, { through, direction: directionOf(other) }, reach);
  });
  return quantile(shares, 0.75);
}
