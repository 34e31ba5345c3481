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

/** Again and again joins the two ends that meet most nearly in a straight line, as long as any do, within `reach` pixels. */
function joined(branches: readonly (readonly number[])[], width: number, reach: number): PixelPath[] {
  let paths = branches.map((pixels) => ({ pixels, ends: endsOf(pixels, width, reach) }));
  const done: PixelPath[] = [];
  for (;;) {
    let best: { a: number; b: number; sideA: number; sideB: number; turn: number } | null = null;
    for (let a = 0; a < paths.length; a++) {
      for (let b = a; b < paths.length; b++) {
        for (let sides = 0; sides < 4; sides++) {
          const [sideA, sideB] = [sides & 1, sides >> 1];
          // A path joins itself only end to beginning, and only where it is long enough to go round.
          if (a === b && (sideA !== 1 || sideB !== 0 || paths[a]!.pixels.length < 3 * reach)) continue;
          const [one, other] = [paths[a]!.ends[sideA]!, paths[b]!.ends[sideB]!];
          const apart = Math.hypot(one.column - other.column, one.row - other.row);
          if (apart > reach) continue;
          const turn = one.x * other.x + one.y * other.y + 0.3 * (apart / reach);
          if (turn < -0.7 && (!best || turn < best.turn)) best = { a, b, sideA, sideB, turn };
        }
      }
    }
    if (!best) break;
    const [one, other] = [paths[best.a]!.pixels, paths[best.b]!.pixels];
    const { a, b } = best;
    paths = paths.filter((_, k) => k !== a && k !== b);
    if (a === b) {
      done.push({ pixels: one, closed: true });
      continue;
    }
    const first = best.sideA === 1 ? one : [...one].reverse();
    const pixels = [...first, ...(best.sideB === 0 ? other : [...other].reverse())];
    paths.push({ pixels, ends: endsOf(pixels, width, reach) });
  }
  return [...done, ...paths.map(({ pixels }) => ({ pixels, closed: false }))];
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
