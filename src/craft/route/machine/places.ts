import KDBush from 'kdbush';
import type { Point } from '#base/geometry/point.ts';

/**
 * The distinct places where holes stand. They are numbered along a k-d tree, so that near places mostly have near
 * numbers: what a search touches together then lies together in memory.
 */
export interface Places {
  readonly count: number;
  /** x and y of each place, in turn. */
  readonly xy: Float64Array;
  /** The holes at each place, in their own order: more than one where holes coincide. */
  readonly holes: readonly (readonly number[])[];
  readonly tree: KDBush;
}

export function placesOf(points: readonly Point[]): Places {
  const groups = coinciding(points);
  const tree = indexed(groups.map((group) => points[group[0]!]!));
  return {
    count: groups.length,
    xy: tree.coords as Float64Array,
    holes: Array.from(tree.ids, (group) => groups[group]!),
    tree,
  };
}

/** A k-d tree of at least one point, with leaves small enough to look for a few neighbours in. */
export function indexed(points: readonly Point[]): KDBush {
  const tree = new KDBush(points.length, LEAF);
  for (const { x, y } of points) tree.add(x, y);
  return tree.finish();
}

const LEAF = 8;

/** Between two places. */
export const apart = (xy: Float64Array, one: number, other: number): number => {
  const dx = xy[2 * one]! - xy[2 * other]!;
  const dy = xy[2 * one + 1]! - xy[2 * other + 1]!;
  return Math.sqrt(dx * dx + dy * dy);
};

function coinciding(points: readonly Point[]): number[][] {
  const sorted = Array.from(points.keys()).sort((one, other) => {
    const [p, q] = [points[one]!, points[other]!];
    return p.x - q.x || p.y - q.y || one - other;
  });
  const groups: number[][] = [];
  for (const hole of sorted) {
    const group = groups.at(-1);
    const first = group && points[group[0]!]!;
    if (group && first && first.x === points[hole]!.x && first.y === points[hole]!.y) group.push(hole);
    else groups.push([hole]);
  }
  return groups;
}
