import { distance, type Point } from '#base/geometry/point.ts';
import { type Field, pinsWithin } from './field.ts';

/** A motion that lays a pattern on itself: a step along it, or a turn by one part of a circle. */
export type Motion =
  | { readonly kind: 'repeat'; readonly step: Point }
  | { readonly kind: 'turn'; readonly centre: Point; readonly order: number };

/** The pins that are copies of each other, by the number of the copy they stand in. */
export type Track = ReadonlyMap<number, number>;

/** Where a place comes to lie `times` copies on (back, where negative). */
export function movedBy(motion: Motion, times: number, { x, y }: Point): Point {
  if (motion.kind === 'repeat') return { x: x + times * motion.step.x, y: y + times * motion.step.y };
  const angle = (2 * Math.PI * times) / motion.order;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const { centre } = motion;
  const [dx, dy] = [x - centre.x, y - centre.y];
  return { x: centre.x + cos * dx - sin * dy, y: centre.y + sin * dx + cos * dy };
}

/** How well a motion lays the feature pins on each other. */
export interface Overlay {
  /** For each feature pin the one it falls on, where there is one. */
  readonly next: ReadonlyMap<number, number>;
  /** For each feature pin that does not fall off the pattern: about 1/2 where it meets a copy, near 0 by chance. */
  readonly meets: ReadonlyMap<number, number>;
  /** Mean of `meets`; 0 where hardly a pin stays on the pattern. */
  readonly score: number;
}

/** Copies of jittered pins lie this many standard deviations apart at most. */
const REACH = 5;

/** Lays the feature pins, or those `asked` of them, on the others. */
export function overlay(
  field: Field,
  features: ReadonlySet<number>,
  motion: Motion,
  sigma: number,
  asked: ReadonlySet<number> = features,
): Overlay {
  const stays = staysOn(field, features, motion);
  const reach = REACH * sigma;
  const nearestTo = (place: Point, self: number): number | undefined => {
    let best: number | undefined;
    let least = reach;
    for (const pin of pinsWithin(field, place, reach)) {
      const off = distance(place, field.pins[pin]!);
      if (pin === self || !features.has(pin) || off > least) continue;
      least = off;
      best = pin;
    }
    return best;
  };
  const next = new Map<number, number>();
  const meets = new Map<number, number>();
  let sum = 0;
  for (const pin of asked) {
    const there = movedBy(motion, 1, field.pins[pin]!);
    if (!stays(there)) continue;
    const other = nearestTo(there, pin);
    const back = other === undefined ? undefined : nearestTo(movedBy(motion, -1, field.pins[other]!), other);
    if (other === undefined || back !== pin) {
      meets.set(pin, 0);
      continue;
    }
    const off = distance(there, field.pins[other]!) / sigma;
    next.set(pin, other);
    const value = Math.exp((-off * off) / 4);
    meets.set(pin, value);
    sum += value;
  }
  const enough = meets.size >= Math.max(6, 0.15 * asked.size);
  return { next, meets, score: enough ? sum / meets.size : 0 };
}

/** Whether a place is not beyond the ends of the pattern, seen along a repeat. A turn never leaves it. */
function staysOn(field: Field, features: ReadonlySet<number>, motion: Motion): (place: Point) => boolean {
  if (motion.kind === 'turn') return () => true;
  const along = ({ x, y }: Point): number => x * motion.step.x + y * motion.step.y;
  let [least, most] = [Infinity, -Infinity];
  for (const pin of features) {
    const value = along(field.pins[pin]!);
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  return (place) => along(place) >= least && along(place) <= most;
}

/** Of a pin and its neighbours, the share that must meet a copy. */
const LEAST_MET = 0.55;
/** Squares of offsets, in parts of what jitter makes: of their mean over neighbours, and on average. */
const MOST_DRIFT = 8;
const MOST_OFFSET = 1.7;

/**
 * The tracks of pins that are copies of each other. A pin belongs to one only if those round it meet their copies
 * too, and no farther off nor more to one side than jitter explains: single pins meet others by chance, and pins
 * along a curve that comes again need not come again with it.
 */
export function findTracks(
  field: Field,
  features: ReadonlySet<number>,
  motion: Motion,
  sigma: number,
  groups: readonly (readonly number[])[],
): Map<number, number>[] {
  const { next, meets } = overlay(field, features, motion, sigma);
  const supported = (pin: number): boolean => {
    let [asked, met, x, y, squares] = [0, 0, 0, 0, 0];
    for (const other of [pin, ...field.near[pin]!.subarray(0, 10)]) {
      if (!meets.has(other)) continue;
      asked++;
      const copy = next.get(other);
      if (copy === undefined) continue;
      const home = movedBy(motion, -1, field.pins[copy]!);
      const dx = home.x - field.pins[other]!.x;
      const dy = home.y - field.pins[other]!.y;
      met++;
      x += dx;
      y += dy;
      squares += dx * dx + dy * dy;
    }
    // Each offset is the difference of two jitters: 2 sigma^2 in each coordinate.
    const drift = (x * x + y * y) / (2 * met * sigma * sigma);
    return (
      met >= LEAST_MET * asked && drift < MOST_DRIFT && squares / (4 * met * sigma * sigma) < MOST_OFFSET
    );
  };
  const links = new Map<number, number>();
  for (const [pin, other] of next) if (supported(pin)) links.set(pin, other);
  dropHalfMet(links, meets, features, groups);
  return motion.kind === 'repeat'
    ? openTracks(field, features, motion, links, sigma)
    : roundTracks(field, motion, links);
}

/** Of a chain's pins, or of the loose pins, the share that must have a copy for any of them to have one. */
const LEAST_WHOLE = 0.6;

/** A chain comes again as a whole or not at all; loose pins, where most of the chains do. */
function dropHalfMet(
  links: Map<number, number>,
  meets: ReadonlyMap<number, number>,
  features: ReadonlySet<number>,
  groups: readonly (readonly number[])[],
): void {
  const loose = new Set(features);
  let [askedInGroups, metInGroups] = [0, 0];
  for (const group of groups) {
    for (const pin of group) loose.delete(pin);
    const asked = group.filter((pin) => meets.has(pin));
    const met = asked.filter((pin) => links.has(pin)).length;
    askedInGroups += asked.length;
    if (met >= LEAST_WHOLE * asked.length) metInGroups += met;
    else for (const pin of asked) links.delete(pin);
  }
  const askedLoose = [...loose].filter((pin) => meets.has(pin));
  const metLoose = askedLoose.filter((pin) => links.has(pin)).length;
  const asked = askedInGroups + askedLoose.length;
  const believed = askedInGroups >= 0.5 * asked ? metInGroups / askedInGroups : metLoose / askedLoose.length;
  if (!(believed >= 0.5)) for (const pin of askedLoose) links.delete(pin);
}

function openTracks(
  field: Field,
  features: ReadonlySet<number>,
  motion: Motion & { kind: 'repeat' },
  links: Map<number, number>,
  sigma: number,
): Map<number, number>[] {
  const size = motion.step.x ** 2 + motion.step.y ** 2;
  const along = ({ x, y }: Point): number => (x * motion.step.x + y * motion.step.y) / size;
  let least = Infinity;
  for (const pin of features) least = Math.min(least, along(field.pins[pin]!));
  const hasBefore = new Set(links.values());
  const tracks: Map<number, number>[] = [];
  for (const start of [...links.keys()].filter((pin) => !hasBefore.has(pin)).sort((p, q) => p - q)) {
    const track = new Map<number, number>();
    let copy = Math.floor(along(field.pins[start]!) - least + 1e-6);
    for (let pin: number | undefined = start; pin !== undefined; pin = links.get(pin)) track.set(copy++, pin);
    tracks.push(track);
  }
  return joinOverGaps(field, motion, tracks, sigma);
}

/** Joins a track that ends to one that begins two copies on in the same place: one pin lacks between them. */
function joinOverGaps(
  field: Field,
  motion: Motion,
  tracks: readonly Map<number, number>[],
  sigma: number,
): Map<number, number>[] {
  const startOf = new Map<number, Map<number, number>>();
  for (const track of tracks) startOf.set(track.values().next().value!, track);
  const joined = new Set<Map<number, number>>();
  for (const track of tracks) {
    if (joined.has(track)) continue;
    for (;;) {
      const [copy, last] = [...track].at(-1)!;
      const there = movedBy(motion, 2, field.pins[last]!);
      const rest = pinsWithin(field, there, REACH * sigma)
        .map((pin) => startOf.get(pin))
        .find((other) => other !== undefined && other !== track && !joined.has(other));
      if (rest === undefined) break;
      joined.add(rest);
      let at = copy + 2;
      const first = rest.keys().next().value!;
      for (const [own, pin] of rest) track.set(at + own - first, pin);
      at = 0;
    }
  }
  return tracks.filter((track) => !joined.has(track));
}

function roundTracks(
  field: Field,
  motion: Motion & { kind: 'turn' },
  links: ReadonlyMap<number, number>,
): Map<number, number>[] {
  const before = new Map([...links].map(([pin, other]) => [other, pin]));
  const seen = new Set<number>();
  const tracks: Map<number, number>[] = [];
  for (const pin of [...links.keys()].sort((p, q) => p - q)) {
    if (seen.has(pin)) continue;
    let first = pin;
    for (let round = 0; round < motion.order; round++) {
      const earlier = before.get(first);
      if (earlier === undefined || earlier === pin) break;
      first = earlier;
    }
    const track = new Map<number, number>();
    for (let at: number | undefined = first, copy = 0; at !== undefined && copy < motion.order; copy++) {
      if (seen.has(at)) break;
      seen.add(at);
      track.set(copy, at);
      at = links.get(at);
    }
    tracks.push(track);
  }
  return joinRound(field, motion, tracks);
}

/** On a ring, tracks that are parts of one orbit are put together by the angle between them. */
function joinRound(
  field: Field,
  motion: Motion & { kind: 'turn' },
  tracks: readonly Map<number, number>[],
): Map<number, number>[] {
  const whole: { radius: number; angle: number; track: Map<number, number> }[] = [];
  const part = (2 * Math.PI) / motion.order;
  for (const track of tracks.toSorted((a, b) => b.size - a.size)) {
    const folded = meanPlace(field, motion, track);
    const radius = distance(folded, motion.centre);
    const angle = Math.atan2(folded.y - motion.centre.y, folded.x - motion.centre.x);
    const host = whole.find((other) => {
      const turns = (angle - other.angle) / part;
      const off = (turns - Math.round(turns)) * part * radius;
      if (Math.hypot(off, radius - other.radius) > 0.25 * field.spacing) return false;
      const shift = Math.round(turns);
      return [...track.keys()].every((copy) => !other.track.has(mod(copy + shift, motion.order)));
    });
    if (host === undefined) whole.push({ radius, angle, track });
    else {
      const shift = Math.round((angle - host.angle) / part);
      for (const [copy, pin] of track) host.track.set(mod(copy + shift, motion.order), pin);
    }
  }
  return whole.map(({ track }) => track);
}

const mod = (value: number, base: number): number => ((value % base) + base) % base;

/** The mean place of a track's pins, all brought into copy 0. */
export function meanPlace(field: Field, motion: Motion, track: Track): Point {
  let [x, y] = [0, 0];
  for (const [copy, pin] of track) {
    const home = movedBy(motion, -copy, field.pins[pin]!);
    x += home.x / track.size;
    y += home.y / track.size;
  }
  return { x, y };
}

/** The step that suits all tracks best (least squares over every pin and its copies). */
export function betterStep(field: Field, step: Point, tracks: readonly Track[]): Point {
  let [x, y, all] = [0, 0, 0];
  for (const track of tracks) {
    let [mean, mx, my] = [0, 0, 0];
    for (const [copy, pin] of track) {
      mean += copy / track.size;
      mx += field.pins[pin]!.x / track.size;
      my += field.pins[pin]!.y / track.size;
    }
    for (const [copy, pin] of track) {
      x += (copy - mean) * (field.pins[pin]!.x - mx);
      y += (copy - mean) * (field.pins[pin]!.y - my);
      all += (copy - mean) ** 2;
    }
  }
  return all > 0 ? { x: x / all, y: y / all } : step;
}
