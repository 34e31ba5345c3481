import { type Box, boxOf, joinBoxes } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { anchorsOf } from './anchors.ts';
import type { Pattern, Pin } from './pattern.ts';

export const emptyPattern: Pattern = {
  unit: 'mm',
  about: {},
  pins: [],
  runs: [],
  marks: [],
  areas: [],
  sizes: {},
  scale: { from: 'none' },
};

/** A pattern of pins at these places, in this order, named p1, p2 and so on; its size is vouched for by nothing. */
export const patternFromPins = (points: readonly Point[]): Pattern => ({
  ...emptyPattern,
  pins: points.map(({ x, y }, index) => ({ id: `p${index + 1}`, x, y })),
});

/** Index of each pin by its id. */
export const pinIndex = ({ pins }: Pick<Pattern, 'pins'>): ReadonlyMap<string, number> =>
  new Map(pins.map(({ id }, index) => [id, index]));

export const pinsById = ({ pins }: Pick<Pattern, 'pins'>): ReadonlyMap<string, Pin> =>
  new Map(pins.map((pin) => [pin.id, pin]));

/**
 * The index of the pin that a person or a result speaks of: an id, or an index from 0. An id comes first, so that a
 * pin whose id is `7` is found by it. Null where there is no such pin.
 */
export function findPin({ pins }: Pick<Pattern, 'pins'>, name: string | number): number | null {
  const byId = typeof name === 'string' ? pins.findIndex(({ id }) => id === name) : -1;
  if (byId >= 0) return byId;
  const index = typeof name === 'number' ? name : /^\d+$/.test(name) ? Number(name) : -1;
  return Number.isInteger(index) && index >= 0 && index < pins.length ? index : null;
}

/** The smallest box round all pins' centres; empty where there are none. */
export const boxOfPins = ({ pins }: Pick<Pattern, 'pins'>): Box => boxOf(pins);

/** The smallest box round all pins, marks and areas, by their centres and anchors; strokes may reach further. */
export function boxOfPattern(pattern: Pattern): Box {
  const anchors = [...pattern.marks.flatMap(anchorsOf), ...pattern.areas.flatMap(({ outline }) => outline)];
  // Those that lie on pins reach no further than the pins.
  return joinBoxes(
    boxOf(pattern.pins),
    boxOf(anchors.flatMap((anchor) => ('pin' in anchor ? [] : [anchor]))),
  );
}
