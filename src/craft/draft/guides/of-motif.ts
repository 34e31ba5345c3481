import { closedSpline, type Knot } from '#base/geometry/closed-spline.ts';
import { cubicPoint } from '#base/geometry/curve.ts';
import type { Point } from '#base/geometry/point.ts';
import type { MotifRecipe, MotifShape } from '#pattern/recipe/motif.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { placedKnots } from '../motif/shape.ts';
import { type Guide, type GuideSpot, onLine, rounded, STEPS } from './guide.ts';

/** The outline of a motif, and where it lies, in the first repeat. */
export function motifGuides(recipe: MotifRecipe, at: number): Guide[] {
  const motif = recipe.motifs[at]!;
  const put = (changed: Partial<MotifShape>): Recipe => ({
    ...recipe,
    motifs: recipe.motifs.with(at, { ...motif, ...changed }),
  });
  return [outlineGuide(motif, `motifs.${at}`, put), placeGuide(motif, `motifs.${at}.at`, put)];
}

const FEWEST = 3;

function outlineGuide(motif: MotifShape, path: string, put: (changed: Partial<MotifShape>) => Recipe): Guide {
  const { outline } = motif;
  const knots = placedKnots(motif);
  return {
    path,
    points: knots.map(({ x, y, sharp }) => ({ x, y, isOn: true, isSharp: sharp ?? false })),
    line: outlineOf(knots),
    move: (at, place) => put({ outline: outline.with(at, { ...outline[at]!, ...measured(motif, place) }) }),
    add: (spot) => put({ outline: outline.toSpliced(spot.after + 1, 0, measured(motif, spot)) }),
    remove: (at) => (outline.length > FEWEST ? put({ outline: outline.toSpliced(at, 1) }) : null),
    setSharp(at, sharp) {
      const { x, y } = outline[at]!;
      return put({ outline: outline.with(at, sharp ? { x, y, sharp } : { x, y }) });
    },
  };
}

const placeGuide = (
  { at }: MotifShape,
  path: string,
  put: (changed: Partial<MotifShape>) => Recipe,
): Guide => ({
  path,
  points: [onLine(at)],
  line: [],
  move: (_, place) => put({ at: rounded(place) }),
  add: null,
  remove: () => null,
  setSharp: null,
});

/** One cubic runs from each knot to the next; the spline begins at the first sharp one. */
function outlineOf(knots: readonly Knot[]): GuideSpot[] {
  const first = Math.max(
    0,
    knots.findIndex(({ sharp }) => sharp),
  );
  return closedSpline(knots)
    .flat()
    .flatMap((cubic, k) =>
      Array.from({ length: STEPS + 1 }, (_, step) => ({
        ...cubicPoint(cubic, step / STEPS),
        after: (first + k) % knots.length,
        share: step / STEPS,
      })),
    );
}

/** A place on the lace as the motif measures it: from where it lies, before it is turned and mirrored. */
function measured({ at, turn, mirrored }: MotifShape, { x, y }: Point): Point {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const across = (x - at.x) * cos + (y - at.y) * sin;
  return rounded({ x: mirrored ? -across : across, y: (y - at.y) * cos - (x - at.x) * sin });
}
