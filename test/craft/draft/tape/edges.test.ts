import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubicChain } from '#base/geometry/cubic-chain.ts';
import type { ParametricCurve } from '#base/geometry/motion.ts';
import { add, distance, dot, length, type Point, scale, subtract } from '#base/geometry/point.ts';
import { periodicSpline, splineThrough } from '#base/geometry/spline.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { TapeRecipe } from '#pattern/recipe/tape.ts';
import { anyTape, drafted } from './recipes.ts';

/** The middle line as the recipe says it, closely sampled. */
function middleOf(recipe: TapeRecipe): ParametricCurve {
  const { course, closed } = recipe.tapes[0]!;
  if (!('through' in course)) throw new Error('a course through points');
  return cubicChain(closed ? periodicSpline(course.through, { x: 0, y: 0 }) : splineThrough(course.through));
}

const line = (curve: ParametricCurve, offset: number): { place: Point; along: number }[] => {
  let [along, before] = [0, null as Point | null];
  return Array.from({ length: 400 * curve.spans + 1 }, (_, k) => {
    const { place, velocity } = curve.motionAt(k / 400);
    const speed = Math.hypot(velocity.x, velocity.y);
    const at = { x: place.x + (offset * velocity.y) / speed, y: place.y - (offset * velocity.x) / speed };
    if (before) along += distance(before, at);
    before = at;
    return { place: at, along };
  });
};

/** How far a pin lies from a sampled line, and how far along it. */
function nearest(
  course: readonly { place: Point; along: number }[],
  pin: Point,
): { away: number; along: number } {
  let best = { away: Infinity, along: 0 };
  for (let k = 1; k < course.length; k++) {
    const { place: from, along } = course[k - 1]!;
    if (distance(from, pin) > best.away + 1) continue;
    const way = subtract(course[k]!.place, from);
    const share = Math.max(0, Math.min(1, dot(subtract(pin, from), way) / dot(way, way)));
    const away = distance(add(from, scale(way, share)), pin);
    if (away < best.away) best = { away, along: along + share * length(way) };
  }
  return best;
}

const edge = ({ pins }: Pattern, side: 'l' | 'r') => pins.filter(({ id }) => id.startsWith(`t1.${side}`));
const square = (recipe: TapeRecipe): TapeRecipe => ({
  ...recipe,
  tapes: recipe.tapes.map((tape) => ({ ...tape, start: 'square', finish: 'square' })),
});

describe('the pins of a tape', () => {
  it('stand within 2 % of even by arc length along both edges, at half the width from the middle line', () => {
    fc.assert(
      fc.property(anyTape.map(square), (recipe) => {
        const { width, spacing, closed } = recipe.tapes[0]!;
        const pattern = drafted(recipe);
        for (const [side, offset] of [
          ['l', width / 2],
          ['r', -width / 2],
        ] as const) {
          const course = line(middleOf(recipe), offset);
          const total = course.at(-1)!.along;
          const pins = edge(pattern, side);
          const alongs = pins.map((pin) => {
            const { away, along } = nearest(course, pin);
            expect(away).toBeLessThan(0.001 * spacing);
            return along;
          });
          const steps = alongs.slice(1).map((value, k) => value - alongs[k]!);
          if (closed) steps.push(alongs[0]! + total - alongs.at(-1)!);
          const spaces = pins.length - (side === 'l' && !closed ? 1 : 0);
          // The nearest whole number; a half may go either way.
          expect(Math.abs(spaces - total / spacing)).toBeLessThan(0.501);
          for (const step of steps) expect(Math.abs(step - total / spaces)).toBeLessThan(0.02 * spacing);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('are paired without going back, every pin in some row', () => {
    fc.assert(
      fc.property(
        anyTape.map((recipe) => ({ ...recipe, tapes: recipe.tapes.map((t) => ({ ...t, workers: true })) })),
        (recipe) => {
          const pattern = drafted(recipe);
          const rows = pattern.marks.flatMap((mark) =>
            mark.kind === 'line' && 'pin' in mark.from && 'pin' in mark.to
              ? [[mark.from.pin, mark.to.pin]]
              : [],
          );
          const numbers = rows.map((row) => row.map((id) => Number(id.slice(4))));
          const round = recipe.tapes[0]!.closed ? rows.length - 2 : rows.length;
          for (let k = 1; k < round; k++) {
            const moved = [0, 1].map((side) => numbers[k]![side]! - numbers[k - 1]![side]!);
            const isWrapped = recipe.tapes[0]!.closed && moved.some((step) => step < 0);
            if (!isWrapped) expect(moved.toSorted()).toEqual([0, 1]);
          }
          const met = new Set(rows.flat());
          expect(met.size).toBe(pattern.pins.length);
        },
      ),
      { numRuns: 60 },
    );
  });
});
