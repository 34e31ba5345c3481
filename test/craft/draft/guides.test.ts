import { describe, expect, test } from 'vitest';
import { draft } from '#craft/draft/draft.ts';
import { guidesOf, nearestSpot, spotBehind } from '#craft/draft/guides/guides.ts';
import { library } from '#craft/draft/library/index.ts';
import { recipeSchema } from '#pattern/recipe/recipe.ts';
import type { TapeRecipe } from '#pattern/recipe/tape.ts';

const drawn = library.filter(({ recipe }) => guidesOf(recipe).length > 0);

test('tapes and motifs of the library have guides, and strips have none', () => {
  expect(drawn.map(({ recipe }) => recipe.kind)).toEqual(['tape', 'tape', 'motif', 'motif', 'motif']);
});

describe.each(drawn.map(({ name, recipe }) => ({ name, recipe })))('the guides of $name', ({ recipe }) => {
  const guides = guidesOf(recipe);

  test('a point that is put where it is changes no place', () => {
    for (const guide of guides) {
      for (const [at, point] of guide.points.entries()) {
        const again = guidesOf(guide.move(at, point)).find(({ path }) => path === guide.path)!;
        for (const [k, { x, y }] of again.points.entries()) {
          expect(Math.hypot(x - guide.points[k]!.x, y - guide.points[k]!.y)).toBeLessThan(0.001);
        }
      }
    }
  });

  test('a moved point lies where it was moved, and no other of its line is moved', () => {
    for (const guide of guides) {
      const at = guide.points.length - 1;
      const { x, y } = guide.points[at]!;
      const moved = guide.move(at, { x: x + 1.25, y: y - 0.5 });
      expect(recipeSchema.safeParse(moved).success).toBe(true);
      const again = guidesOf(moved).find(({ path }) => path === guide.path)!;
      expect(again.points[at]!.x).toBeCloseTo(x + 1.25, 2);
      expect(again.points[at]!.y).toBeCloseTo(y - 0.5, 2);
      for (const [k, point] of again.points.entries()) {
        if (k !== at) expect(point).toEqual(guide.points[k]);
      }
    }
  });

  test('the line goes through its points', () => {
    for (const { line, points } of guides) {
      if (line.length === 0) continue;
      for (const point of points) {
        if (point.isOn) expect(nearestSpot(line, point)!.away).toBeLessThan(0.01);
      }
    }
  });

  test('a point that is put in behind another lies on the line, and can be taken out again', () => {
    for (const guide of guides) {
      const spot = guide.add && spotBehind(guide.line, 0);
      if (!spot) continue;
      const more = guide.add!(spot);
      const again = guidesOf(more).find(({ path }) => path === guide.path)!;
      expect(again.points.length).toBe(guide.points.length + 1);
      expect(again.points[1]!.x).toBeCloseTo(spot.x, 2);
      expect(again.points[1]!.y).toBeCloseTo(spot.y, 2);
      expect(again.remove(1)).toEqual(recipe);
    }
  });
});

describe('a tape along drawn curves', () => {
  const recipe = recipeSchema.parse({
    kind: 'tape',
    tapes: [
      {
        course: {
          from: { x: 0, y: 0 },
          curves: [
            { first: { x: 20, y: 0 }, second: { x: 40, y: 20 }, to: { x: 60, y: 20 } },
            { first: { x: 80, y: 20 }, second: { x: 90, y: 40 }, to: { x: 110, y: 40 } },
          ],
        },
        width: 4,
        spacing: 2,
      },
    ],
  }) as TapeRecipe;
  const [guide] = guidesOf(recipe);

  test('shows its ends and the points that shape it', () => {
    expect(guide!.points.map(({ isOn }) => isOn)).toEqual([true, false, false, true, false, false, true]);
  });

  test('is cut in two without being bent', () => {
    const more = guide!.add!(guide!.line.find(({ after, share }) => after === 3 && share > 0.4)!);
    const again = guidesOf(more)[0]!;
    expect(again.points.length).toBe(10);
    // The line is drawn in chords of 2 mm, which run up to 0.03 mm inside such a bend.
    for (const spot of again.line) expect(nearestSpot(guide!.line, spot)!.away).toBeLessThan(0.04);
    expect(draft(more).ok).toBe(true);
  });

  test('loses an end of a curve, but no point that shapes one, and never its last curve', () => {
    expect(guidesOf(guide!.remove(3)!)[0]!.points.length).toBe(4);
    expect(guidesOf(guide!.remove(0)!)[0]!.points[0]).toMatchObject({ x: 60, y: 20 });
    expect(guide!.remove(1)).toBeNull();
    expect(guidesOf(guide!.remove(6)!)[0]!.remove(0)).toBeNull();
  });
});

test('a corner of an outline is made round, and back', () => {
  const heart = library.find(({ name }) => name === 'harbour-heart')!.recipe;
  const [outline] = guidesOf(heart);
  const round = outline!.setSharp!(0, false);
  expect(guidesOf(round)[0]!.points[0]!.isSharp).toBe(false);
  expect(guidesOf(round)[0]!.setSharp!(0, true)).toEqual(heart);
});
