import type { Point } from '#base/geometry/point.ts';
import { type Link, neighbourLinks } from './triangulate.ts';

/**
 * The shortest set of links that joins all points: a minimum spanning tree, taken from the Delaunay triangulation, which
 * holds one (M. I. Shamos and D. Hoey, FOCS 1975), by Kruskal's method; n log n. Coinciding points stay unjoined.
 */
export function shortestTree(points: readonly Point[]): Link[] {
  const links = neighbourLinks(points).sort((a, b) => a.length - b.length || a.from - b.from || a.to - b.to);
  const groups = new Groups(points.length);
  return links.filter(({ from, to }) => groups.join(from, to));
}

/** Things that are joined step by step into groups (union-find with path halving). */
export class Groups {
  readonly #parent: Int32Array;

  constructor(size: number) {
    this.#parent = Int32Array.from({ length: size }, (_, at) => at);
  }

  /** The thing that stands for the whole group. */
  of(thing: number): number {
    let at = thing;
    for (let up = this.#parent[at]!; up !== at; up = this.#parent[at]!) {
      this.#parent[at] = this.#parent[up]!;
      at = up;
    }
    return at;
  }

  /** False where both were in one group already. */
  join(one: number, other: number): boolean {
    const [a, b] = [this.of(one), this.of(other)];
    if (a === b) return false;
    this.#parent[Math.max(a, b)] = Math.min(a, b);
    return true;
  }
}
