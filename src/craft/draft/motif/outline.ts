import { add, distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { MotifShape } from '#pattern/recipe/motif.ts';
import type { Drafting } from '../drafting.ts';
import type { FittedMotif } from './fit.ts';

/** The outline of a motif in one repeat, as it is drafted. */
export interface Outline {
  /** Leads a pair of the ground to the outline, where it goes from a pin towards a place that has none. */
  readonly join: (standing: string, lacking: Point) => void;
}

/**
 * Sets the pins of an outline with their runs, the gimp, and the area where it is worked in a stitch or a filling.
 * Pins are named after motif, repeat and number along the outline, all from 1: `m2.1.17`.
 */
export function drawOutline(
  drafting: Drafting,
  { filling, gimp }: MotifShape,
  { parts, shape }: FittedMotif,
  name: string,
  shift: Point,
): Outline {
  const pins = parts.flat().map((pin, n) => drafting.pin(`${name}.${n + 1}`, add(pin, shift)));
  const path = pins.map((pin) => ({ pin }));
  drawRuns(drafting, { parts, shape }, pins, name);
  if (gimp) drafting.mark({ id: name, kind: 'gimp', path, closed: true });
  if (filling?.kind === 'stitch') {
    const { stitch, tint } = filling;
    drafting.area({ id: name, outline: path, stitch, ...(tint && { tint }) });
  } else if (filling) {
    drafting.area({ id: name, outline: path, stitch: 'filling', name: filling.ground });
  }
  return { join: joiner(drafting, pins) };
}

/** One closed run round a smooth outline, else one from each corner to the next. */
function drawRuns(
  drafting: Drafting,
  { parts, shape }: Pick<FittedMotif, 'parts' | 'shape'>,
  pins: readonly string[],
  name: string,
): void {
  const common = { role: 'outline', even: true } as const;
  if (shape.smooth) {
    drafting.run({ ...common, id: name, pins, shape: 'curve', closed: true });
    return;
  }
  let first = 0;
  for (const [part, { length }] of parts.entries()) {
    const along = [...pins.slice(first, first + length), pins[(first + length) % pins.length]!];
    const isStraight = shape.parts[part]!.straight;
    drafting.run({
      ...common,
      id: `${name}-${part + 1}`,
      pins: along,
      shape: isStraight ? 'line' : 'curve',
      closed: false,
    });
    first += length;
  }
}

/** A pair goes to the pin of the outline by which its way is shortest; no two pairs are drawn on one line. */
function joiner(drafting: Drafting, pins: readonly string[]): Outline['join'] {
  const places = pins.map((pin) => drafting.placeOf(pin));
  const index = new PointIndex(places);
  const drawn = new Set<string>();
  return (standing, lacking) => {
    const from = drafting.placeOf(standing);
    const way = (pin: number) => distance(from, places[pin]!) + distance(places[pin]!, lacking);
    const near = index.within(from, REACH * distance(from, lacking));
    if (near.length === 0) return;
    const best = near.reduce((one, other) => (way(other) < way(one) - ROUNDING ? other : one));
    const id = `${standing}-${pins[best]}`;
    if (drawn.has(id)) return;
    drawn.add(id);
    drafting.mark({ id, kind: 'line', from: { pin: standing }, to: { pin: pins[best]! } });
  };
}

/** A pair goes on to the outline no farther than this many of its steps in the ground. */
const REACH = 1.25;

const ROUNDING = 1e-9;
