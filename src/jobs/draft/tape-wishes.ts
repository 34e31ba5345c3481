import { distance, type Point } from '#base/geometry/point.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import type { Tape, TapeRecipe } from '#pattern/recipe/tape.ts';
import { tapePoints } from './first-time.ts';

/** A straight tape, as wide as the last: across a place or down over it, or else beside all that is there. */
export function tapeWishes(recipe: TapeRecipe, place: Point): readonly Recipe[] {
  const last = recipe.tapes.at(-1)!;
  const long = Math.max(20, 6 * last.width);
  const { again } = recipe;
  const points = tapePoints(recipe);
  const clear = 3 * last.width;
  if (again?.kind === 'step') {
    // It goes on from one time to the next, and is straight all the way.
    const { step } = again;
    const size = Math.hypot(step.x, step.y);
    const aside = { x: -step.y / size, y: step.x / size };
    const off = ({ x, y }: Point) => x * aside.x + y * aside.y;
    const offs = points.map(off);
    const beside = [off(place), Math.max(...offs) + clear, Math.min(...offs) - clear];
    return beside.map((to) => {
      const from = { x: place.x + (to - off(place)) * aside.x, y: place.y + (to - off(place)) * aside.y };
      return withTape(recipe, last, [from, { x: from.x + step.x / 2, y: from.y + step.y / 2 }]);
    });
  }
  const ends = (at: Point, across: number, down: number): readonly Point[] => [
    { x: at.x - across / 2, y: at.y - down / 2 },
    { x: at.x + across / 2, y: at.y + down / 2 },
  ];
  const beside =
    again?.kind === 'turn'
      ? ends(
          {
            x: again.centre.x + Math.max(...points.map((point) => distance(point, again.centre))) + clear,
            y: again.centre.y,
          },
          0,
          long,
        )
      : ends({ x: place.x, y: Math.max(...points.map(({ y }) => y)) + clear }, long, 0);
  return [ends(place, long, 0), ends(place, 0, long), beside].map((through) =>
    withTape(recipe, last, through),
  );
}

function withTape(recipe: TapeRecipe, like: Tape, through: readonly Point[]): Recipe {
  const { footside: _, ...others } = like;
  const course = { through: through.map(({ x, y }) => ({ x: round(x), y: round(y) })) };
  const tape: Tape = { ...others, course, closed: false, groups: 1, start: 'square', finish: 'square' };
  return { ...recipe, tapes: [...recipe.tapes, tape] };
}

const round = (mm: number): number => Number(mm.toFixed(3)) + 0;
