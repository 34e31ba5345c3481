import type { Point } from '#base/geometry/point.ts';
import type { TapeRecipe } from '#pattern/recipe/tape.ts';

/** Where a place lies in what is drawn, where all of it comes again: by the same way as the copy that it lies in. */
export function inFirstTime(recipe: TapeRecipe, place: Point): Point {
  const { again } = recipe;
  if (!again) return place;
  const points = tapePoints(recipe);
  if (again.kind === 'step') {
    const { step, count } = again;
    const size = step.x * step.x + step.y * step.y;
    const along = ({ x, y }: Point) => (x * step.x + y * step.y) / size;
    const time = Math.floor(along(place) - Math.min(...points.map(along)));
    const back = Math.min(count - 1, Math.max(0, time));
    return { x: place.x - back * step.x, y: place.y - back * step.y };
  }
  const { centre, count } = again;
  const [x, y] = [place.x - centre.x, place.y - centre.y];
  const sum = points.reduce((all, point) => ({ x: all.x + point.x, y: all.y + point.y }));
  const first = Math.atan2(sum.y - points.length * centre.y, sum.x - points.length * centre.x);
  const part = (2 * Math.PI) / count;
  const turn = -part * Math.round((Math.atan2(y, x) - first) / part);
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { x: centre.x + x * cos - y * sin, y: centre.y + x * sin + y * cos };
}

/** The points that the tapes go through, as they are drawn. */
export const tapePoints = ({ tapes }: TapeRecipe): readonly Point[] =>
  tapes.flatMap(({ course }) =>
    'through' in course ? course.through : [course.from, ...course.curves.map(({ to }) => to)],
  );
