import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { draft } from '#craft/draft/draft.ts';
import { repeatsBend } from '#craft/draft/ring/limits.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { type RingRecipe, ringRecipe } from '#pattern/recipe/ring.ts';
import { faultsOf } from '../faults.ts';
import { workable } from '../workable.ts';

const plain = (parts: Partial<RingRecipe>): RingRecipe =>
  ringRecipe.parse({ kind: 'ring', spacing: 4, angle: 45, repeats: 12, length: 4, width: 8, ...parts });

function drafted(recipe: RingRecipe): Pattern {
  const made = draft(recipe, { maker: 'Quayside Workshop', source: 'a test', permission: 'for tests' });
  if (!made.ok) throw new Error(JSON.stringify(made.trouble));
  return made.value;
}

const curved = { pins: fc.integer({ min: 5, max: 11 }), stitch: fc.constant('cloth' as const) };
const edges: fc.Arbitrary<Pick<RingRecipe, 'headside' | 'footside'>> = fc.record({
  headside: fc.oneof(
    fc.record({ kind: fc.constantFrom('straight' as const, 'footside' as const, 'points' as const) }),
    fc.record({ kind: fc.constantFrom('fans' as const, 'scallops' as const), ...curved }),
  ),
  footside: fc.constantFrom({ kind: 'plain' as const }, { kind: 'passives' as const, share: 0.6 }),
});
const AREAS: RingRecipe['areas'] = [
  { shape: 'diamond', column: 5, row: 3, size: 2, stitch: 'cloth', gimp: true },
  { shape: 'spider', column: 4, row: 4, size: 2 },
  { shape: 'trail', column: 2, row: 0, size: 2, stitch: 'half' },
];

/** Every figure over its range; what cannot be met is told, and then the nearest that works is taken. */
const recipesOf = (arcs: fc.Arbitrary<number>): fc.Arbitrary<RingRecipe> =>
  fc
    .record({
      spacing: fc.double({ min: 2.5, max: 9, noNaN: true }),
      angle: fc.double({ min: 30, max: 75, noNaN: true }),
      repeats: fc.integer({ min: 3, max: 30 }),
      length: fc.integer({ min: 1, max: 6 }),
      width: fc.integer({ min: 3, max: 12 }),
      foot: fc.constantFrom('inside' as const, 'outside' as const),
      arc: arcs,
      edge: edges,
      area: fc.subarray(AREAS, { maxLength: 1 }),
    })
    .filter(({ repeats, length }) => repeats * length >= 8)
    .map(({ edge, area, ...figures }) => workable(ringRecipe, plain({ ...figures, ...edge, areas: area })))
    .filter((recipe) => recipe !== null);

const whole = fc.constant(360);
const recipes = recipesOf(fc.oneof(whole, fc.double({ min: 30, max: 350, noNaN: true })));

describe('a ring', () => {
  it('passes the looking over and stays where it is when straightened, over the whole range', () => {
    fc.assert(
      fc.property(recipes, (recipe) => {
        expect(faultsOf(drafted(recipe))).toEqual({ findings: [], movedTooFar: [] });
      }),
      { numRuns: 20 },
    );
  });

  it('has the same pins after a turn by one repeat', () => {
    fc.assert(
      fc.property(recipesOf(whole), (recipe) => {
        const { pins } = drafted(recipe);
        const turn = (2 * Math.PI) / recipe.repeats;
        expect(
          farthestFromAny(
            pins,
            pins.map((pin) => turned(pin, turn)),
          ),
        ).toBeLessThan(1e-9 * Math.max(1, ...pins.map(({ x, y }) => Math.hypot(x, y))));
      }),
      { numRuns: 20 },
    );
  });

  it('keeps the ground at its angle: the images of its lines cross the rings at the angle of the strip', () => {
    // At a pin the tangent of the image of a lattice line, against the tangent of the circle through the pin.
    const step = 1e-4;
    fc.assert(
      fc.property(recipes, (recipe) => {
        const bend = repeatsBend(recipe);
        const radians = (recipe.angle * Math.PI) / 180;
        const column = (recipe.spacing / 2) * Math.tan(radians);
        for (let i = 0; i <= recipe.width; i++) {
          const at = { x: i * column, y: (i % 2) * (recipe.spacing / 2) };
          const on = { x: at.x + step * Math.sin(radians), y: at.y + step * Math.cos(radians) };
          const before = { x: at.x - step * Math.sin(radians), y: at.y - step * Math.cos(radians) };
          const [here, from, to] = [bend.place(at), bend.place(before), bend.place(on)];
          const line = Math.atan2(to.y - from.y, to.x - from.x);
          const ring = Math.atan2(here.y, here.x) + Math.PI / 2;
          const between = Math.abs(Math.sin(line - ring));
          expect(Math.abs((Math.asin(between) * 180) / Math.PI - recipe.angle)).toBeLessThan(0.05);
        }
      }),
    );
  });

  it('has straight steps whose angle nears that of the ground as the cells grow small against the ring', () => {
    // A chord deviates from the tangent by half the angle that its cell spans: in first order of spacing by radius.
    const off = (repeats: number): number => {
      const { pins } = drafted(plain({ repeats, width: 2 }));
      const place = new Map(pins.map((pin) => [pin.id, pin]));
      const [from, to] = [place.get('f0')!, place.get('g1.1')!];
      const line = Math.atan2(to.y - from.y, to.x - from.x);
      const ring = Math.atan2(from.y, from.x) + Math.PI / 2;
      return Math.abs((Math.asin(Math.abs(Math.sin(line - ring))) * 180) / Math.PI - 45);
    };
    const [coarse, fine] = [off(10), off(100)];
    expect(coarse / fine).toBeGreaterThan(9);
    expect(coarse / fine).toBeLessThan(11);
  });

  it('closes its footside and doubles no pin where the ends meet', () => {
    const recipe = plain({ repeats: 9, length: 3, width: 7 });
    const { pins, runs, sizes, repeat } = drafted(recipe);
    const footside = runs.find(({ role }) => role === 'footside')!;
    expect(footside.closed).toBe(true);
    expect(new Set(footside.pins).size).toBe(27);
    expect(footside.pins).toHaveLength(27);
    const index = new PointIndex(pins);
    for (let k = 0; k < pins.length; k++) expect(index.nearestTo(k, 10)).toBeGreaterThan(1);
    expect(sizes.footsideSpacing).toBe(4);
    expect(repeat).toBeUndefined();
  });

  it('leaves a part of a ring open, as long as the arc says', () => {
    const { pins, runs } = drafted(plain({ arc: 120 }));
    const footside = runs.find(({ role }) => role === 'footside')!;
    expect(footside.closed).toBe(false);
    const place = new Map(pins.map((pin) => [pin.id, pin]));
    const [first, last] = [place.get(footside.pins[0]!)!, place.get(footside.pins.at(-1)!)!];
    const between = Math.atan2(last.y, last.x) - Math.atan2(first.y, first.x);
    expect((between * 180) / Math.PI).toBeCloseTo(120, 9);
  });

  it('puts the footside on the side that the recipe names', () => {
    const radii = (foot: 'inside' | 'outside') => {
      const { pins, runs } = drafted(plain({ foot }));
      const place = new Map(pins.map((pin) => [pin.id, pin]));
      const { x, y } = place.get(runs[0]!.pins[0]!)!;
      return pins.map((pin) => Math.hypot(pin.x, pin.y) - Math.hypot(x, y));
    };
    expect(Math.min(...radii('inside'))).toBeGreaterThan(-1e-9);
    expect(Math.max(...radii('outside'))).toBeLessThan(1e-9);
  });
});

describe('a ring that cannot be', () => {
  it.each([
    ['opened too far', plain({ repeats: 3, length: 4, width: 30 }), 'bend-too-tight'],
    ['too fine inside', plain({ spacing: 1.4, repeats: 8, width: 14, foot: 'outside' }), 'pins-too-close'],
  ])('tells the fewest repeats that work: %s', (_, recipe, why) => {
    const made = draft(recipe);
    if (made.ok) throw new Error('it was drafted');
    expect(made.trouble).toMatchObject({ figure: 'repeats', given: recipe.repeats, why });
    const nearest = made.trouble.nearest!;
    expect(draft({ ...recipe, repeats: nearest }).ok).toBe(true);
    expect(draft({ ...recipe, repeats: nearest - 1 }).ok).toBe(false);
  });
});

describe('a ring that is nearly closed', () => {
  it('is told to close, or to leave an opening that one sees', () => {
    const almost = draft(plain({ arc: 359 }));
    if (almost.ok) throw new Error('it was drafted');
    expect(almost.trouble).toMatchObject({ figure: 'arc', given: 359, most: 338.82, nearest: 360 });
    expect(draft(plain({ arc: 338.82 })).ok).toBe(true);
    const wide = draft(plain({ arc: 345 }));
    expect(!wide.ok && wide.trouble.nearest).toBe(338.82);
  });
});

const turned = ({ x, y }: Point, angle: number): Point => ({
  x: x * Math.cos(angle) - y * Math.sin(angle),
  y: x * Math.sin(angle) + y * Math.cos(angle),
});

function farthestFromAny(pins: readonly Point[], places: readonly Point[]): number {
  const index = new PointIndex(pins);
  return Math.max(
    ...places.map((place) => {
      const nearest = index.nearest(place, 0.1);
      return nearest === null ? Number.POSITIVE_INFINITY : distance(pins[nearest]!, place);
    }),
  );
}
