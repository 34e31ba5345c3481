import { type Affine, applyAffine, compose, rotation, translation } from '#base/geometry/affine.ts';
import { add, type Point, scale } from '#base/geometry/point.ts';
import { normal, seededRandom } from '#base/random.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Lattice, Regularity, Structure } from '#pattern/structure.ts';

/** A pattern and what its pins meant, told by the one who laid them out rather than found. */
export interface Laid {
  readonly pattern: Pattern;
  readonly regularity: Regularity;
}

export function laid(
  places: readonly Point[],
  structures: readonly Structure[],
  more: Partial<Pattern> = {},
): Laid {
  const structureOf: (string | null)[] = places.map(() => null);
  for (const structure of structures)
    if ('pins' in structure) for (const pin of structure.pins) structureOf[pin] ??= structure.id;
  return {
    pattern: {
      unit: 'mm',
      about: {},
      pins: places.map(({ x, y }, at) => ({ id: `p${at}`, x, y })),
      runs: [],
      marks: [],
      areas: [],
      sizes: {},
      scale: { from: 'drafted' },
      ...more,
    },
    regularity: { structures, structureOf, places, missing: [], stray: [] },
  };
}

/** A lattice patch of `wide` by `high` cells along a and b, from pin number `first` on. */
export function patch(
  id: string,
  first: number,
  [origin, a, b]: readonly [Point, Point, Point],
  [wide, high]: readonly [number, number],
): { places: Point[]; lattice: Lattice } {
  const nodes = Array.from({ length: wide * high }, (_, at) => [at % wide, Math.floor(at / wide)] as const);
  const places = nodes.map(([i, j]) => add(origin, add(scale(a, i), scale(b, j))));
  const pins = nodes.map((_, at) => first + at);
  return { places, lattice: { kind: 'lattice', id, rms: 0, origin, a, b, pins, nodes } };
}

/** A strip of ground at 45 degrees: every other place of `columns` by `rows` half spacings, as a lattice of the diagonals. */
export function diagonalStrip(columns: number, rows: number): Laid {
  const at = Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => ({ row, column: 2 * column + (row % 2) })),
  ).flat();
  const places = at.map(({ row, column }) => ({ x: 2.5 * column, y: 2.5 * row }));
  // Diagonals: i along (1, 1), j along (1, -1).
  const nodes = at.map(({ row, column }) => [(column + row) / 2, (column - row) / 2] as const);
  const lattice: Lattice = {
    kind: 'lattice',
    id: 'ground',
    rms: 0,
    origin: { x: 0, y: 0 },
    a: { x: 2.5, y: 2.5 },
    b: { x: 2.5, y: -2.5 },
    pins: places.map((_, index) => index),
    nodes,
  };
  return laid(places, [lattice]);
}

/** The same, turned by an angle and shifted; what the structures say turns with it. */
export function turned({ pattern, regularity }: Laid, angle: number): Laid {
  const map = compose(translation(40, -7), rotation(angle));
  const linear: Affine = { ...map, e: 0, f: 0 };
  const places = pattern.pins.map((pin) => applyAffine(map, pin));
  const structures = regularity.structures.map((structure): Structure => {
    if (structure.kind !== 'lattice') return structure;
    const { origin, a, b } = structure;
    return {
      ...structure,
      origin: applyAffine(map, origin),
      a: applyAffine(linear, a),
      b: applyAffine(linear, b),
    };
  });
  const pins = pattern.pins.map((pin, at) => ({ ...pin, ...places[at]! }));
  return { pattern: { ...pattern, pins }, regularity: { ...regularity, structures, places } };
}

/** Every pin off its place as an unsteady hand puts it. */
export function shaken({ pattern, regularity }: Laid, sigma: number, seed: number): Laid {
  const random = seededRandom(seed);
  const pins = pattern.pins.map((pin) => ({
    ...pin,
    x: pin.x + sigma * normal(random),
    y: pin.y + sigma * normal(random),
  }));
  return { pattern: { ...pattern, pins }, regularity };
}
