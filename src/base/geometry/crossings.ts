import type { ParametricCurve } from './motion.ts';
import { cross, distance, dot, length, type Point, scale, subtract } from './point.ts';
import { PointIndex } from './point-index.ts';

/** A curve with points on it in order, close enough together that no crossing hides between two of them. */
export interface SampledCurve {
  readonly curve: ParametricCurve;
  /** The curve ends where it begins: the last sample is the first again. */
  readonly closed: boolean;
  readonly parameters: readonly number[];
  readonly places: readonly Point[];
}

/** Where two curves, or two parts of one, cross. `earlier` comes first in the list of curves, or along the one. */
export interface Crossing {
  readonly place: Point;
  /** Acute angle between the two, radians. */
  readonly angle: number;
  readonly earlier: CurvePoint;
  readonly later: CurvePoint;
}

export interface CurvePoint {
  readonly curve: number;
  readonly parameter: number;
}

/** Samples of a curve at `count` even steps of its parameter a span. */
export function sampled(curve: ParametricCurve, closed: boolean, perSpan: number): SampledCurve {
  const count = Math.max(1, Math.round(curve.spans * perSpan));
  const parameters = Array.from({ length: count + 1 }, (_, k) => (k * curve.spans) / count);
  return { curve, closed, parameters, places: parameters.map((t) => curve.motionAt(t).place) };
}

/** Every crossing among curves and of each with itself, in the order of the later part. Cost grows about as n log n. */
export function crossingsAmong(curves: readonly SampledCurve[]): Crossing[] {
  const chords = curves.flatMap(({ places }, curve) =>
    places.slice(1).map((to, at): Chord => ({ curve, at, from: places[at]!, to })),
  );
  const middles = chords.map(({ from, to }) => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }));
  const longest = chords.reduce((most, { from, to }) => Math.max(most, distance(from, to)), 0);
  const index = new PointIndex(middles);
  return chords.flatMap((later, k) =>
    index
      .within(middles[k]!, (distance(later.from, later.to) + longest) / 2)
      .filter((other) => other < k)
      .sort((p, q) => p - q)
      .flatMap((other): Crossing[] => {
        const earlier = chords[other]!;
        if (areNeighbours(curves, earlier, later)) return [];
        const shares = chordsCross(earlier, later);
        return shares === null ? [] : [refined(curves, earlier, later, shares)];
      }),
  );
}

interface Chord {
  readonly curve: number;
  readonly at: number;
  readonly from: Point;
  readonly to: Point;
}

function areNeighbours(curves: readonly SampledCurve[], earlier: Chord, later: Chord): boolean {
  if (earlier.curve !== later.curve) return false;
  const { closed, places } = curves[later.curve]!;
  const apart = later.at - earlier.at;
  return apart <= 1 || (closed && apart >= places.length - 2);
}

/** How far along each of two chords they meet, from 0 up to but not including 1; null where they do not. */
function chordsCross(one: Chord, other: Chord): readonly [number, number] | null {
  const u = subtract(one.to, one.from);
  const v = subtract(other.to, other.from);
  const across = cross(u, v);
  if (across === 0) return null;
  const off = subtract(other.from, one.from);
  const s = cross(off, v) / across;
  const t = cross(off, u) / across;
  return s >= 0 && s < 1 && t >= 0 && t < 1 ? [s, t] : null;
}

/** From where the chords meet to where the curves do, by Newton's method. */
function refined(
  curves: readonly SampledCurve[],
  earlier: Chord,
  later: Chord,
  [s, t]: readonly [number, number],
): Crossing {
  const one = curves[earlier.curve]!;
  const other = curves[later.curve]!;
  let p = along(one, earlier.at, s);
  let q = along(other, later.at, t);
  for (let round = 0; round < 8; round++) {
    const a = one.curve.motionAt(p);
    const b = other.curve.motionAt(q);
    const off = subtract(b.place, a.place);
    const across = cross(a.velocity, b.velocity);
    if (length(off) < CLOSE || across === 0) break;
    p = within(p + cross(off, b.velocity) / across, one);
    q = within(q + cross(off, a.velocity) / across, other);
  }
  const a = one.curve.motionAt(p);
  const b = other.curve.motionAt(q);
  const angle = Math.atan2(Math.abs(cross(a.velocity, b.velocity)), Math.abs(dot(a.velocity, b.velocity)));
  return {
    place: scale({ x: a.place.x + b.place.x, y: a.place.y + b.place.y }, 0.5),
    angle,
    earlier: { curve: earlier.curve, parameter: p },
    later: { curve: later.curve, parameter: q },
  };
}

const CLOSE = 1e-10;

const along = ({ parameters }: SampledCurve, at: number, share: number): number =>
  parameters[at]! + share * (parameters[at + 1]! - parameters[at]!);

const within = (t: number, { curve }: SampledCurve): number => Math.max(0, Math.min(curve.spans, t));
