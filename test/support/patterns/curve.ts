import { between, distance, type Point } from '#base/geometry/point.ts';

/** A curve sampled closely enough that its chords stand for it. */
export function sample(curve: (t: number) => Point, from: number, to: number, steps = 800): Point[] {
  return Array.from({ length: steps + 1 }, (_, k) => curve(from + ((to - from) * k) / steps));
}

/** `count` points at even distances along a polyline; a closed one must end where it starts. */
export function evenly(line: readonly Point[], count: number, closed: boolean): Point[] {
  const along = [0];
  for (let k = 1; k < line.length; k++) along.push(along[k - 1]! + distance(line[k - 1]!, line[k]!));
  const step = along.at(-1)! / (closed ? count : count - 1);
  const points: Point[] = [];
  let k = 1;
  for (let n = 0; n < count; n++) {
    const target = Math.min(n * step, along.at(-1)!);
    while (k < line.length - 1 && along[k]! < target) k++;
    points.push(between(line[k - 1]!, line[k]!, (target - along[k - 1]!) / (along[k]! - along[k - 1]!)));
  }
  return points;
}

export const lengthOf = (line: readonly Point[]): number =>
  line.reduce((sum, point, k) => (k === 0 ? 0 : sum + distance(line[k - 1]!, point)), 0);

/** The polyline moved to its left by `offset` mm, as seen when walking along it on a sheet whose y runs down. */
export function beside(line: readonly Point[], offset: number, closed = false): Point[] {
  const last = line.length - 1;
  return line.map((point, k) => {
    const before = line[k > 0 ? k - 1 : closed ? last - 1 : 0]!;
    const after = line[k < last ? k + 1 : closed ? 1 : last]!;
    const size = distance(before, after) || 1;
    return {
      x: point.x + (offset * (after.y - before.y)) / size,
      y: point.y - (offset * (after.x - before.x)) / size,
    };
  });
}

/** Whether a point lies inside a polygon (even-odd rule). */
export function inside(polygon: readonly Point[], { x, y }: Point): boolean {
  let odd = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const a = polygon[i]!;
    const b = polygon[j]!;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) odd = !odd;
  }
  return odd;
}

/** Distance from a point to the nearest vertex of a closely sampled polyline. */
export const nearness = (line: readonly Point[], point: Point): number =>
  line.reduce((least, other) => Math.min(least, distance(other, point)), Infinity);
