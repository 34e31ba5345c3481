import type { Point } from '#base/geometry/point.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';

/** A part of a recipe that is drawn by points: the middle line of a tape, the outline of a motif, a plait. */
export interface Guide {
  /** Path of the part in the recipe: 'tapes.0', 'motifs.1'. */
  readonly path: string;
  /** Where on the lace the points lie, mm. */
  readonly points: readonly GuidePoint[];
  /** The line that they make, in short steps; empty where they make none. */
  readonly line: readonly GuideSpot[];
  /** The recipe with a point elsewhere. */
  move(at: number, place: Point): Recipe;
  /** The recipe with one point more on the line, behind the point `spot.after`; null where there can be none. */
  readonly add: ((spot: GuideSpot) => Recipe) | null;
  /** The recipe without a point; null where it has to stay. */
  remove(at: number): Recipe | null;
  /** The recipe with a point that is a corner, or is none; null where the line has no corners. */
  readonly setSharp: ((at: number, sharp: boolean) => Recipe) | null;
}

export interface GuidePoint extends Point {
  /** Whether the line goes through it; else it draws the line towards itself. */
  readonly isOn: boolean;
  readonly isSharp: boolean;
}

/** A place on a guide's line. */
export interface GuideSpot extends Point {
  /** The point before it. */
  readonly after: number;
  /** How far it is from there to the next, 0 to 1. */
  readonly share: number;
}

/** Steps from one point to the next in which a line is drawn. */
export const STEPS = 24;

export const onLine = ({ x, y }: Point): GuidePoint => ({ x, y, isOn: true, isSharp: false });

/** The straight lines from point to point. */
export const straightLine = (points: readonly Point[]): GuideSpot[] =>
  points.map(({ x, y }, after) => ({
    x,
    y,
    after: Math.min(after, points.length - 2),
    share: after < points.length - 1 ? 0 : 1,
  }));

/** A file carries 0.001 mm. */
export const rounded = ({ x, y }: Point): Point => ({ x: round(x), y: round(y) });

const round = (mm: number): number => Number(mm.toFixed(3)) + 0;
