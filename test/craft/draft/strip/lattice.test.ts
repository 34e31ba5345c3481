import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { pinsById } from '#pattern/pins.ts';
import { scaledRecipe } from '#pattern/recipe/scaled.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import type { StripArea } from '#pattern/recipe/strip-area.ts';
import { anyStrip, base, drafted } from './recipes.ts';

const SEED = 1899;
const sure = { seed: SEED, numRuns: 100 };

describe(`any strip (seed ${SEED})`, () => {
  it('has pins once in every second place of each row where its edges are straight', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 30 }), fc.integer({ min: 1, max: 9 }), (width, length) => {
        const rows = 2 * length * base.repeats;
        // Even rows begin at the footside, odd ones a column beside it.
        const even = Math.floor(width / 2) + 1;
        const odd = Math.floor((width + 1) / 2);
        const count = (rows / 2 + 1) * even + (rows / 2) * odd;
        expect(drafted({ ...base, width, length }).pins).toHaveLength(count);
      }),
      sure,
    );
  });

  it('has ground lines at its angle to the footside', () => {
    fc.assert(
      fc.property(anyStrip, ({ footside: _, headside: __, ...recipe }) => {
        const pattern = drafted(recipe);
        const pins = pinsById(pattern);
        for (const mark of pattern.marks) {
          if (mark.kind !== 'line' || !('pin' in mark.from) || !('pin' in mark.to)) continue;
          const [from, to] = [pins.get(mark.from.pin)!, pins.get(mark.to.pin)!];
          const angle = (Math.atan2(Math.abs(to.x - from.x), to.y - from.y) * 180) / Math.PI;
          // Along the edges a line runs straight down.
          expect(Math.min(angle, Math.abs(angle - recipe.angle))).toBeLessThan(1e-9);
        }
      }),
      sure,
    );
  });

  it('has a cell of area |a| |b| sin of twice the angle', () => {
    fc.assert(
      fc.property(anyStrip, ({ spacing, angle }) => {
        const pins = pinsById(drafted({ ...base, spacing, angle }));
        const [top, left, right] = [pins.get('g4.4')!, pins.get('g3.5')!, pins.get('g5.5')!];
        const [a, b] = [distance(top, left), distance(top, right)];
        const area = (left.y - top.y) * (right.x - top.x) - (right.y - top.y) * (left.x - top.x);
        expect(area).toBeCloseTo(a * b * Math.sin((2 * angle * Math.PI) / 180), 9);
        expect(left.y - top.y).toBe(right.y - top.y);
      }),
      sure,
    );
  });

  it('comes again after every repeat, and ends as it begins', () => {
    fc.assert(
      fc.property(anyStrip, (recipe) => {
        const { pins, repeat } = drafted(recipe);
        const rows = 2 * recipe.length * recipe.repeats * (recipe.spacing / 2);
        const near = (place: Point) => pins.some((pin) => distance(pin, place) < 0.001);
        for (const { x, y } of pins) {
          if (y + repeat!.step.y < rows + 0.001) expect(near({ x, y: y + repeat!.step.y })).toBe(true);
          if (y < 0.001) expect(near({ x, y: y + rows })).toBe(true);
        }
      }),
      { ...sure, numRuns: 30 },
    );
  });

  it('drafted from a recipe k times as large is k times as large', () => {
    fc.assert(
      fc.property(anyStrip, fc.double({ min: 1, max: 8, noNaN: true }), (recipe, k) => {
        const small = drafted(recipe);
        const large = drafted(scaledRecipe(recipe, k) as StripRecipe);
        expect(large.marks).toEqual(small.marks);
        large.pins.forEach((pin, n) => {
          const { id, x, y } = small.pins[n]!;
          expect(pin.id).toBe(id);
          expect(distance(pin, { x: k * x, y: k * y })).toBeLessThan(1e-9 * k * 1000);
        });
      }),
      { ...sure, numRuns: 50 },
    );
  });

  it('has arcs with as many pins as asked for, evenly along a circle', () => {
    fc.assert(
      fc.property(anyStrip, (recipe) => {
        if (recipe.headside?.kind !== 'fans' && recipe.headside?.kind !== 'scallops') return;
        const pattern = drafted(recipe);
        const pins = pinsById(pattern);
        const arcs = pattern.runs.filter(({ role }) => role === 'headside');
        expect(arcs).toHaveLength(recipe.repeats);
        for (const arc of arcs) {
          const places = arc.pins.map((pin) => pins.get(pin)!);
          expect(places).toHaveLength(recipe.headside.pins);
          const steps = places.slice(1).map((place, k) => distance(place, places[k]!));
          expect(Math.max(...steps) - Math.min(...steps)).toBeLessThan(1e-9 * recipe.spacing);
        }
      }),
      sure,
    );
  });
});

describe('an area on the lattice', () => {
  const wide: StripRecipe = { ...base, width: 40, length: 30, repeats: 1 };
  const plain = drafted(wide).pins.length;
  const area = (shape: StripArea): StripRecipe => ({ ...wide, areas: [shape] });

  // Pick's theorem, A = I + B/2 - 1 in cells (G. Pick, Sitzungsber. Lotos 19 (1899) 311).
  const pick = (cells: number, around: number): number => cells - around / 2 + 1;

  it.each([1, 2, 3, 5, 8])('a diamond of %i holes lacks the pins that Pick counts within', (size) => {
    const row = 30 + (size % 2);
    const { pins } = drafted(area({ shape: 'diamond', column: 20, row, size, stitch: 'cloth' }));
    expect(plain - pins.length).toBe(pick(size * size, 4 * size));
  });

  it.each([1, 2, 4])('a square of %i holes does too', (size) => {
    // 2n columns by 2n rows; a cell takes two places of those.
    const { pins } = drafted(area({ shape: 'square', column: 20, row: 30, size, stitch: 'half' }));
    expect(plain - pins.length).toBe(pick(2 * size * size, 4 * size));
  });

  it.each(['headside', 'footside', 'up', 'down'] as const)(
    'a chevron that points to the %s does too',
    (points) => {
      const [arm, size] = [6, 2];
      const { pins } = drafted(
        area({ shape: 'chevron', column: 20, row: 30, arm, size, points, stitch: 'cloth' }),
      );
      // A square of the arm's side without the one that the band leaves of it.
      const cells = arm ** 2 - (arm - size) ** 2;
      const around = 2 * arm + 2 * size + 2 * (arm - size);
      expect(plain - pins.length).toBe(pick(cells, around));
    },
  );

  it.each([1, 2, 3])('a trail of %i holes lacks its inner pins in every row', (size) => {
    const { pins } = drafted(
      area({ shape: 'trail', column: 4, row: 0, size, perRepeat: 5, stitch: 'cloth' }),
    );
    expect(plain - pins.length).toBe((size - 1) * (2 * wide.length + 1));
  });

  it('has its corners, and both ends of every leg, at pins that stand', () => {
    const pattern = drafted({
      ...base,
      width: 16,
      length: 8,
      areas: [
        { shape: 'diamond', column: 8, row: 0, size: 4, stitch: 'cloth', gimp: true },
        { shape: 'spider', column: 8, row: 9, size: 3 },
      ],
    });
    const pins = pinsById(pattern);
    const anchors = [
      ...pattern.areas.flatMap(({ outline }) => outline),
      ...pattern.marks.flatMap((mark) => (mark.kind === 'line' ? [mark.from, mark.to] : [])),
    ];
    expect(anchors.every((anchor) => 'pin' in anchor && pins.has(anchor.pin))).toBe(true);
    // Half of one at either end of the strip.
    expect(pattern.areas).toHaveLength(base.repeats + 1);
    const legs = pattern.marks.filter(
      (mark) => mark.kind === 'line' && 'pin' in mark.from && mark.from.pin === 'g8.9',
    );
    expect(legs).toHaveLength(4 * 3 - 2);
  });
});
