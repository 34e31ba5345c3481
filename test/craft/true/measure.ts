import { distance, type Point } from '#base/geometry/point.ts';
import type { Random } from '#base/random.ts';
import type { Regularity } from '#pattern/structure.ts';
import { drawPins, jitter, type KnownPattern, omit, type Role } from '../../support/patterns/index.ts';

/** How a straightened pattern compares with its truth. */
export interface Measured {
  /** Root mean square distance from the ideal after, in parts of that before, of the pins with certain roles. */
  readonly ratio: (roles: readonly Role[]) => number;
  /** Structures whose own pins stand farther from the ideal after than before. */
  readonly worse: number;
  readonly structures: number;
  /** Omitted pins that neighbours determine, those of them proposed, all proposals, and the right ones among them. */
  readonly determined: number;
  readonly found: number;
  readonly proposed: number;
  readonly right: number;
}

/** An unsteady hand: every pin strays, and one in 150 is forgotten. */
export function byHand(known: KnownPattern, sigma: number, random: Random): KnownPattern {
  const strayed = jitter(known, sigma, random);
  return omit(strayed, drawPins(strayed, Math.max(1, Math.round(known.ideal.length / 150)), random));
}

export function measure(
  known: KnownPattern,
  { places, structureOf, structures, missing }: Regularity,
): Measured {
  const { pins } = known.pattern;
  const squares = (points: readonly Point[], wanted: (pin: number) => boolean): number =>
    points.reduce((sum, point, pin) => sum + (wanted(pin) ? distance(point, known.ideal[pin]!) ** 2 : 0), 0);
  const ratioOf = (wanted: (pin: number) => boolean): number =>
    Math.sqrt(squares(places, wanted) / squares(pins, wanted));
  const worse = structures.filter(({ id }) => ratioOf((pin) => structureOf[pin] === id) > 1.0001);
  const determined = known.omitted.filter((_, k) => isDetermined(known, k));
  const matches = (place: Point): boolean => missing.some((one) => distance(one, place) < REACH);
  return {
    ratio: (roles) => ratioOf((pin) => roles.includes(known.roles[pin]!)),
    worse: worse.length,
    structures: structures.length,
    determined: determined.length,
    found: determined.filter(({ place }) => matches(place)).length,
    proposed: missing.length,
    right: missing.filter((one) => known.omitted.some(({ place }) => distance(one, place) < REACH)).length,
  };
}

/** A proposal this near to an omitted pin's ideal place, mm, means that pin. */
const REACH = 0.6;

/** Whether two pins left in the pattern lie evenly on opposite sides of an omitted one, within its neighbours' reach. */
function isDetermined({ ideal, roles, omitted }: KnownPattern, index: number): boolean {
  const { place, role } = omitted[index]!;
  const near = ideal
    .flatMap((point, pin) => (roles[pin] === role ? [{ point, off: distance(point, place) }] : []))
    .sort((p, q) => p.off - q.off)
    .slice(0, 8);
  const reach = 1.5 * (near[0]?.off ?? 0);
  return near.some((one, k) =>
    near.slice(k + 1).some((other) => {
      const middle = { x: (one.point.x + other.point.x) / 2, y: (one.point.y + other.point.y) / 2 };
      return other.off < reach && distance(middle, place) < 0.2 * one.off;
    }),
  );
}
