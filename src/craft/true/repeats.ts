import { length, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { betterStep, findTracks, type Motion, meanPlace, movedBy, overlay, type Track } from './copies.ts';
import type { Field } from './field.ts';
import type { GrownPolar } from './polar-grow.ts';

/** A motion of the pattern on to itself with the pins it carries on to each other. */
export interface Copies {
  readonly motion: Motion;
  readonly tracks: readonly Track[];
}

/**
 * The step after which the feature pins come again; null where they do not. Pins of lattices and of straight even
 * runs are no features: they come again after any of their own steps.
 */
export function findRepeat(
  field: Field,
  features: ReadonlySet<number>,
  sigma: number,
  groups: readonly (readonly number[])[],
): Copies | null {
  if (features.size < LEAST_FEATURES) return null;
  const asked = sampleOf(features);
  let best: Scored | null = null;
  for (const candidate of candidateSteps(field, features, sigma)) {
    const step = settled(field, features, candidate, sigma, asked);
    const { score } = overlay(field, features, { kind: 'repeat', step }, sigma, asked);
    if (score < LEAST_SCORE) continue;
    if (best === null || isBetter(step, score, best, sigma)) best = { step, score };
  }
  return best === null ? null : repeatOf(field, features, best.step, sigma, groups);
}

/** The order of the turn about a polar lattice's centre under which the other pins come again; null where none. */
export function findTurn(
  field: Field,
  features: ReadonlySet<number>,
  { frame }: GrownPolar,
  sigma: number,
  groups: readonly (readonly number[])[],
): Copies | null {
  if (features.size < 6) return null;
  let best: { motion: Motion; score: number } | null = null;
  for (let order = 3; order <= frame.sectors; order++) {
    if (frame.sectors % order !== 0) continue;
    const motion: Motion = { kind: 'turn', centre: frame.centre, order };
    const { score } = overlay(field, features, motion, sigma);
    if (score >= LEAST_SCORE && (best === null || score > best.score * 0.8)) best = { motion, score };
  }
  if (best === null) return null;
  const tracks = findTracks(field, features, best.motion, sigma, groups).filter(isUseful);
  return tracks.length === 0 ? null : { motion: best.motion, tracks };
}

/** Where each pin of a track stands once all copies are used together, brought back to its own copy. */
export function foldedPlaces(
  field: Field,
  { motion, tracks }: Copies,
): Map<number, { place: Point; copies: number }> {
  const places = new Map<number, { place: Point; copies: number }>();
  for (const track of tracks) {
    const home = meanPlace(field, motion, track);
    for (const [copy, pin] of track)
      places.set(pin, { place: movedBy(motion, copy, home), copies: track.size });
  }
  return places;
}

interface Scored {
  readonly step: Point;
  readonly score: number;
}

/**
 * Twice or three times the repeat meets as well as the repeat, by chance even better where few pins are left to meet:
 * of a step and its multiple the shorter is taken unless it meets far worse.
 */
function isBetter(step: Point, score: number, best: Scored, sigma: number): boolean {
  const [own, other] = [length(step), length(best.step)];
  if (isMultiple(best.step, step, sigma)) return score > MULTIPLE * best.score;
  if (isMultiple(step, best.step, sigma)) return MULTIPLE * score > best.score;
  return score > best.score * 1.2 || (score > best.score * 0.85 && own < 0.8 * other);
}

const MULTIPLE = 0.65;

/** Whether `long` is two or more times `short`, to a few standard deviations. */
function isMultiple(long: Point, short: Point, sigma: number): boolean {
  const times = Math.round(length(long) / length(short));
  const off = (sign: number): number =>
    Math.hypot(long.x - sign * times * short.x, long.y - sign * times * short.y);
  return times >= 2 && Math.min(off(1), off(-1)) < 2 * times * sigma;
}

const LEAST_FEATURES = 10;
/** A true repeat of jittered pins scores a half; where only a part of the features repeats, less. */
const LEAST_SCORE = 0.17;
const LEAST_STEP = 5;
const LEAST_TRACKS = 4;
/** Where fewer of the features come again than this share of them, they do so by chance. */
const LEAST_CARRIED = 0.3;
const ASKED = 60;
const CANDIDATES = 40;

const isUseful = (track: Track): boolean => track.size >= 2;

function repeatOf(
  field: Field,
  features: ReadonlySet<number>,
  from: Point,
  sigma: number,
  groups: readonly (readonly number[])[],
): Copies | null {
  let step = from;
  let tracks: Track[] = [];
  for (let round = 0; round < 2; round++) {
    tracks = findTracks(field, features, { kind: 'repeat', step }, sigma, groups).filter(isUseful);
    if (tracks.length < LEAST_TRACKS) return null;
    step = betterStep(field, step, tracks);
  }
  const carried = tracks.reduce((sum, track) => sum + track.size, 0);
  return carried < LEAST_CARRIED * features.size ? null : { motion: { kind: 'repeat', step }, tracks };
}

/** One number for a cell of the votes. */
const cellKey = (i: number, j: number): number => i * 2 ** 26 + j;

/** Steps between feature pins that occur again and again, the most frequent first. */
function candidateSteps(field: Field, features: ReadonlySet<number>, sigma: number): Point[] {
  const pins = [...sampleOf(features)];
  const random = seededRandom(pins.length);
  const cell = Math.max(2.5 * sigma, 0.15 * field.spacing);
  const votes = new Map<number, { i: number; j: number; count: number; x: number; y: number }>();
  for (let asked = 0; asked < Math.min(ASKED, pins.length); asked++) {
    const from = field.pins[pins.length <= ASKED ? pins[asked]! : pins[Math.floor(random() * pins.length)]!]!;
    for (const pin of pins) {
      let x = field.pins[pin]!.x - from.x;
      let y = field.pins[pin]!.y - from.y;
      if (Math.hypot(x, y) < LEAST_STEP * field.spacing) continue;
      if (y < 0 || (y === 0 && x < 0)) [x, y] = [-x, -y];
      const i = Math.round(x / cell);
      const j = Math.round(y / cell);
      const key = cellKey(i, j);
      const vote = votes.get(key);
      if (vote === undefined) votes.set(key, { i, j, count: 1, x, y });
      else {
        vote.count++;
        vote.x += x;
        vote.y += y;
      }
    }
  }
  const wide = [...votes.values()].map(({ i, j, count, x, y }) => {
    let around = count;
    for (let di = -1; di <= 1; di++) {
      for (let dj = -1; dj <= 1; dj++) {
        if (di !== 0 || dj !== 0) around += 0.6 * (votes.get(cellKey(i + di, j + dj))?.count ?? 0);
      }
    }
    return { around, step: { x: x / count, y: y / count } };
  });
  return wide
    .sort((a, b) => b.around - a.around || length(a.step) - length(b.step))
    .slice(0, CANDIDATES)
    .map(({ step }) => step);
}

/** So many features tell a good step from a bad one. */
const SAMPLE = 1200;

function sampleOf(features: ReadonlySet<number>): ReadonlySet<number> {
  if (features.size <= SAMPLE) return features;
  const every = features.size / SAMPLE;
  const all = [...features];
  return new Set(Array.from({ length: SAMPLE }, (_, k) => all[Math.floor(k * every)]!));
}

function settled(
  field: Field,
  features: ReadonlySet<number>,
  from: Point,
  sigma: number,
  asked: ReadonlySet<number>,
): Point {
  let step = from;
  for (let round = 0; round < 2; round++) {
    const { next } = overlay(field, features, { kind: 'repeat', step }, sigma, asked);
    if (next.size === 0) return step;
    let [x, y] = [0, 0];
    for (const [pin, other] of next) {
      x += (field.pins[other]!.x - field.pins[pin]!.x) / next.size;
      y += (field.pins[other]!.y - field.pins[pin]!.y) / next.size;
    }
    step = { x, y };
  }
  return step;
}
