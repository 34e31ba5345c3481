import { algebraicCircle } from '#base/fit/circle.ts';
import { median } from '#base/fit/robust.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { pinIndex } from '#pattern/pins.ts';
import type { KnownRound } from './polar-seed.ts';

/**
 * Round centres that the pattern itself tells: an even run on a circle says where its centre is and how many of its
 * spacings fill the circle. A part of a ring says so as well as a whole one, where its pins alone would hardly.
 */
export function roundsOf(pattern: Pattern): KnownRound[] {
  const index = pinIndex(pattern);
  const found: Round[] = [];
  for (const run of pattern.runs) {
    if (run.shape !== 'curve' || !run.even || run.pins.length < LEAST_PINS) continue;
    const round = roundOf(run.pins.flatMap((id) => pattern.pins[index.get(id) ?? -1] ?? []));
    if (round !== null && !found.some((other) => isSame(round, other))) found.push(round);
  }
  return found.map(({ centre, sectors, sigma }) => ({ centre, sectors, sigma }));
}

const LEAST_PINS = 5;
/** How far a pin may stand off the circle, and a spacing off the others, in parts of the spacing. */
const MOST_OFF = 0.1;
/** Between so flat an arc and a straight line nothing can be told. */
const LEAST_RISE = 0.5;

interface Round extends KnownRound {
  readonly spacing: number;
}

function roundOf(places: readonly Point[]): Round | null {
  const circle = algebraicCircle(places);
  if (circle === null) return null;
  const { centre, radius } = circle;
  const steps = places.slice(1).map((place, k) => distance(place, places[k]!));
  const spacing = median(steps);
  const isRound =
    places.every((place) => Math.abs(distance(place, centre) - radius) < MOST_OFF * spacing) &&
    steps.every((step) => Math.abs(step - spacing) < MOST_OFF * spacing);
  const angle = 2 * Math.asin(Math.min(1, spacing / (2 * radius)));
  const rise = radius * (1 - Math.cos(Math.min(Math.PI, (angle * steps.length) / 2)));
  if (!isRound || rise < LEAST_RISE * spacing) return null;
  const offs = [
    ...places.map((place) => distance(place, centre) - radius),
    ...steps.map((step) => step - spacing),
  ];
  return { centre, sectors: Math.round((2 * Math.PI) / angle), spacing, sigma: rootMeanSquare(offs) };
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

const isSame = (one: Round, other: Round): boolean =>
  one.sectors === other.sectors && distance(one.centre, other.centre) < MOST_OFF * one.spacing;
