import type { PixelPoint } from '#base/geometry/point.ts';

/** A line through pixels that follow each other; a closed one does not repeat its first pixel. */
export interface PixelPath {
  readonly pixels: readonly number[];
  readonly closed: boolean;
}

/**
 * Cuts a thinned line (its `pixels`, of a picture `width` wide) into paths at its crossings, joins those that go straight
 * on through a crossing, and drops side branches shorter than `spur` pixels.
 */
export function pathsOf(pixels: readonly number[], width: number, spur: number): PixelPath[] {
  const set = new Set(pixels);
  const steps = [1, -1, width, -width, width + 1, width - 1, -width + 1, -width - 1];
  const around = (at: number): number[] => {
    const straight = steps
      .slice(0, 4)
      .map((step) => at + step)
      .filter((next) => set.has(next));
    // A diagonal neighbour that is also reached by two straight steps is the same branch.
    const slanted = steps
      .slice(4)
      .map((step) => at + step)
      .filter((next) => set.has(next) && !straight.some((side) => isBeside(side, next, width)));
    return [...straight, ...slanted];
  };
  const crossings = new Set(pixels.filter((at) => around(at).length > 2));
  const used = new Set<number>();
  let branches: number[][] = [];
  const walk = (start: number, next: number): number[] => {
    const path = [start];
    for (let at: number | undefined = next; at !== undefined; ) {
      path.push(at);
      if (crossings.has(at)) break;
      used.add(at);
      const before: number = path[path.length - 2]!;
      const onward: number[] = around(at).filter((to) => to !== before && !used.has(to));
      at = onward.find((to) => crossings.has(to) && to !== start) ?? onward[0];
    }
    return path;
  };
  for (const start of pixels) {
    if (!crossings.has(start) && around(start).length !== 1) continue;
    if (!crossings.has(start)) {
      if (used.has(start)) continue;
      used.add(start);
    }
    for (const next of around(start)) {
      if (used.has(next) || crossings.has(next)) continue;
      branches.push(walk(start, next));
    }
  }
  const closed: PixelPath[] = [];
  for (const start of pixels) {
    if (used.has(start) || crossings.has(start)) continue;
    used.add(start);
    const [next] = around(start);
    if (next !== undefined) closed.push({ pixels: walk(start, next), closed: true });
  }
  const isSpur = (path: readonly number[]): boolean =>
    path.length < spur && crossings.has(path[0]!) !== crossings.has(path.at(-1)!);
  branches = branches.filter((path) => !isSpur(path));
  return [...closed, ...joined(branches, width, spur)];
}

/** An end of a path and the direction in which the path leaves there. */
interface End extends PixelPoint {
  readonly x: number;
  readonly y: number;
}

/** Joins ends within `reach` pixels that go straight on into each other, the straightest first, each end once. */
function joined(branches: readonly (readonly number[])[], width: number, reach: number): PixelPath[] {
  // End 2 k is where branch k begins, end 2 k + 1 where it ends.
  const ends = branches.flatMap((pixels) => endsOf(pixels, width, reach));
  const meetings: { readonly one: number; readonly other: number; readonly turn: number }[] = [];
  ends.forEach((a, one) => {
    for (let other = 0; other < one; other++) {
      const b = ends[other]!;
      const apart = Math.hypot(a.column - b.column, a.row - b.row);
      if (apart > reach) continue;
      // A branch joins itself only where it is long enough to go round.
      if (one >> 1 === other >> 1 && branches[one >> 1]!.length < 3 * reach) continue;
      const turn = a.x * b.x + a.y * b.y + 0.3 * (apart / reach);
      if (turn < -0.7) meetings.push({ one, other, turn });
    }
  });
  meetings.sort((a, b) => a.turn - b.turn);
  const mate = new Map<number, number>();
  for (const { one, other } of meetings) {
    if (mate.has(one) || mate.has(other)) continue;
    mate.set(one, other).set(other, one);
  }
  const used = new Set<number>();
  const follow = (first: number): number[] => {
    const pixels: number[] = [];
    for (let end: number | undefined = first; end !== undefined && !used.has(end >> 1); ) {
      used.add(end >> 1);
      const branch: readonly number[] = branches[end >> 1]!;
      pixels.push(...(end % 2 === 0 ? branch : [...branch].reverse()));
      end = mate.get(end ^ 1);
    }
    return pixels;
  };
  const open = ends.flatMap((_, end) => (mate.has(end) || used.has(end >> 1) ? [] : [follow(end)]));
  const closed = branches.flatMap((_, k) => (used.has(k) ? [] : [follow(2 * k)]));
  return [
    ...open.map((pixels) => ({ pixels, closed: false })),
    ...closed.map((pixels) => ({ pixels, closed: true })),
  ];
}

/** The beginning and the end of a path. */
function endsOf(path: readonly number[], width: number, reach: number): readonly [End, End] {
  const back = Math.min(path.length - 1, Math.ceil(1.5 * reach));
  const end = (last: number, inner: number): End => {
    const [at, from] = [placeOf(last, width), placeOf(inner, width)];
    const size = Math.hypot(at.column - from.column, at.row - from.row) || 1;
    return { ...at, x: (at.column - from.column) / size, y: (at.row - from.row) / size };
  };
  return [end(path[0]!, path[back]!), end(path.at(-1)!, path[path.length - 1 - back]!)];
}

export const placeOf = (at: number, width: number): PixelPoint => ({
  column: at % width,
  row: Math.floor(at / width),
});

const isBeside = (a: number, b: number, width: number): boolean => {
  const apart = Math.abs(a - b);
  return apart === 1 || apart === width;
};
