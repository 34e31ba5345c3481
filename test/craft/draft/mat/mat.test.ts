import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { draft } from '#craft/draft/draft.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { type MatRecipe, matRecipe } from '#pattern/recipe/mat.ts';
import { faultsOf } from '../faults.ts';
import { workable } from '../workable.ts';

const edge = { width: 6, length: 1, headside: { kind: 'straight' } };
const mat = (parts: object): MatRecipe =>
  matRecipe.parse({ kind: 'mat', sectors: 24, spacing: 4, outer: edge, ...parts });

function drafted(recipe: MatRecipe): Pattern {
  const made = draft(recipe, { maker: 'Quayside Workshop', source: 'a test', permission: 'for tests' });
  if (!made.ok) throw new Error(JSON.stringify(made.trouble));
  return made.value;
}

const recipes: fc.Arbitrary<MatRecipe> = fc
  .record({
    fours: fc.integer({ min: 3, max: 10 }),
    spacing: fc.double({ min: 2, max: 6, noNaN: true }),
    angle: fc.double({ min: 30, max: 75, noNaN: true }),
    centre: fc.constantFrom('open', 'pin', 'ring'),
    rounds: fc.array(
      fc.record({
        width: fc.integer({ min: 2, max: 5 }),
        length: fc.constantFrom(1, 2, 4),
        band: fc.record({ width: fc.integer({ min: 1, max: 4 }), doubled: fc.boolean() }),
      }),
      { maxLength: 2 },
    ),
    width: fc.integer({ min: 3, max: 7 }),
    length: fc.constantFrom(2, 4),
    headside: fc.constantFrom('straight', 'points', 'fans', 'scallops'),
    pins: fc.integer({ min: 5, max: 9 }),
    picots: fc.boolean(),
  })
  .map(({ fours, centre, width, length, headside, pins, picots, ...figures }) => {
    const curved = headside === 'fans' || headside === 'scallops' ? { pins, stitch: 'cloth' } : {};
    const ring = centre === 'ring' ? { pins: 2 * fours, radius: 4 } : {};
    return mat({
      ...figures,
      sectors: 4 * fours,
      centre: { kind: centre, ...ring },
      outer: { width, length, headside: { kind: headside, ...curved }, picots },
    });
  })
  .map((recipe) => workable(matRecipe, recipe))
  .filter((recipe) => recipe !== null);

describe('a mat', () => {
  it('passes the looking over and stays where it is when straightened, over the whole range', () => {
    fc.assert(
      fc.property(recipes, (recipe) => {
        expect(faultsOf(drafted(recipe))).toEqual({ findings: [], movedTooFar: [] });
      }),
      { numRuns: 12 },
    );
  });

  it('has the same pins after a turn by the repeat of all its rounds', () => {
    fc.assert(
      fc.property(recipes, (recipe) => {
        const { pins } = drafted(recipe);
        const { rounds, outer, centre, sectors } = recipe;
        const repeats = [...rounds, outer].map(({ length }) => sectors / length);
        const order = (centre.kind === 'ring' ? [...repeats, centre.pins] : repeats).reduce(commonDivisor);
        const turn = (2 * Math.PI) / order;
        const size = Math.max(...pins.map(({ x, y }) => Math.hypot(x, y)));
        const index = new PointIndex(pins);
        for (const pin of pins) {
          const place = turned(pin, turn);
          const nearest = index.nearest(place, 0.1);
          expect(nearest).not.toBeNull();
          expect(distance(pins[nearest!]!, place)).toBeLessThan(1e-9 * size);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('has rings in proportion: each exp(pi tan(angle) / sectors) times as large as the one inside it', () => {
    for (const angle of [30, 45, 60]) {
      const rings = ringsOf(drafted(mat({ angle, sectors: 60 })).pins);
      expect(rings).toHaveLength(7);
      const ratio = Math.exp((Math.PI * Math.tan((angle * Math.PI) / 180)) / 60);
      for (let k = 1; k < rings.length; k++)
        expect(rings[k]!.radius / rings[k - 1]!.radius).toBeCloseTo(ratio, 8);
    }
  });

  // Machinery's Handbook, "Lengths of Chords for Spacing Off the Circumferences of Circles": chord for radius 1.
  it.each([
    [7, 0.867767],
    [12, 0.517638],
    [60, 0.104672],
    [100, 0.0628215],
  ])('has %i sectors on a ring whose radius the published table of chords gives', (sectors, chord) => {
    const { pins } = drafted(mat({ sectors, spacing: 20, angle: 30, outer: { ...edge, width: 2 } }));
    const inner = pins.filter(({ id }) => id.startsWith('o.f'));
    expect(inner).toHaveLength(sectors);
    for (const { x, y } of inner) expect((Math.hypot(x, y) * chord) / 20).toBeCloseTo(1, 5);
  });

  it('turns every second ring by half a sector, beyond a band too', () => {
    const rings = ringsOf(drafted(mat({ sectors: 32, rounds: [{ width: 3, band: { width: 2 } }] })).pins);
    // The band is between the rings 3 and 5.
    expect(rings).toHaveLength(11);
    [0, 1, 2, 3, 5, 6, 7, 8, 9, 10, 11].forEach((ring, k) => {
      for (const { x, y } of rings[k]!.pins) {
        const turn = (32 * Math.atan2(y, x)) / (2 * Math.PI);
        expect(Math.abs(turn - Math.round(turn))).toBeCloseTo(ring % 2 === 0 ? 0 : 0.5, 9);
      }
    });
  });

  it('tints a band between two closed edges, the outer one with twice the pins where it is doubled', () => {
    const band = { width: 1, doubled: true, tint: '#c9b7e0' };
    const { areas, runs, pins } = drafted(mat({ sectors: 12, rounds: [{ width: 2, band }] }));
    expect(areas).toHaveLength(1);
    expect(areas[0]).toMatchObject({ stitch: 'cloth', tint: '#c9b7e0' });
    const edges = runs.filter(({ role }) => role === 'trail-edge');
    expect(edges.map(({ pins: on }) => on.length)).toEqual([12, 24]);
    expect(edges.every(({ closed, even }) => closed && even)).toBe(true);
    const place = new Map(pins.map((pin): [string, Point] => [pin.id, pin]));
    const [inner, outer] = edges.map((run) => areaOf(run.pins.map((pin) => place.get(pin)!)));
    const outline = areas[0]!.outline.map((anchor) => ('pin' in anchor ? place.get(anchor.pin)! : anchor));
    expect(areaOf(outline)).toBeCloseTo(outer! - inner!, 9);
  });

  it('has in the middle an opening, a pin or a small ring, to which every pair of the first ring runs', () => {
    const open = drafted(mat({}));
    expect(open.runs[0]).toMatchObject({ role: 'footside', closed: true });
    const pin = drafted(mat({ centre: { kind: 'pin' } }));
    expect(pin.pins.length - open.pins.length).toBe(1);
    expect(pin.marks.length - open.marks.length).toBe(24);
    const ring = drafted(mat({ centre: { kind: 'ring', pins: 12, radius: 6 } }));
    expect(ring.pins.length - open.pins.length).toBe(12);
    expect(ring.marks.length - open.marks.length).toBe(24);
    expect(ring.areas).toHaveLength(1);
  });

  it('has a picot at every pin of its edge, where they are wanted', () => {
    const { marks } = drafted(mat({ outer: { ...edge, picots: true } }));
    expect(marks.filter(({ kind }) => kind === 'picot')).toHaveLength(24);
  });
});

describe('a mat that cannot be', () => {
  it.each([
    ['repeats', { outer: { ...edge, length: 5 } }, 'outer.length', 4],
    ['repeats of a round', { rounds: [{ width: 3, length: 7, band: { width: 1 } }] }, 'rounds.0.length', 6],
    ['ground too open', { sectors: 12, outer: { ...edge, width: 12 } }, 'sectors', 28],
    ['too fine', { spacing: 1 }, 'spacing', 1.061],
    ['a small ring that does not divide', { centre: { kind: 'ring', pins: 7, radius: 6 } }, 'centre.pins', 6],
    ['a small ring too large', { centre: { kind: 'ring', pins: 6, radius: 20 } }, 'centre.radius', 14.572],
    ['a small ring too small', { centre: { kind: 'ring', pins: 24, radius: 1 } }, 'centre.radius', 2.873],
  ])('tells the figure and the nearest that works: %s', (_, parts, figure, nearest) => {
    const made = draft(mat(parts));
    if (made.ok) throw new Error('it was drafted');
    expect(made.trouble).toMatchObject({ figure, nearest });
    expect(workable(matRecipe, mat(parts))).not.toBeNull();
  });
});

function ringsOf(pins: readonly Point[]): { radius: number; pins: Point[] }[] {
  const rings: { radius: number; pins: Point[] }[] = [];
  const outward = pins.map((pin) => ({ pin, radius: Math.hypot(pin.x, pin.y) }));
  for (const { pin, radius } of outward.sort((one, other) => one.radius - other.radius)) {
    const last = rings.at(-1);
    if (last !== undefined && radius - last.radius < 1e-6) last.pins.push(pin);
    else rings.push({ radius, pins: [pin] });
  }
  return rings;
}

const commonDivisor = (one: number, other: number): number =>
  other === 0 ? one : commonDivisor(other, one % other);

const turned = ({ x, y }: Point, angle: number): Point => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
});

/** By the trapezium formula of Gauss. */
const areaOf = (outline: readonly Point[]): number =>
  Math.abs(
    outline.reduce((sum, { x, y }, k) => {
      const next = outline[(k + 1) % outline.length]!;
      return sum + x * next.y - y * next.x;
    }, 0) / 2,
  );
