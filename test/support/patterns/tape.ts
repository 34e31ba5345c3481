import { between, distance, type Point } from '#base/geometry/point.ts';
import { PatternBuilder } from './builder.ts';
import { beside, evenly, lengthOf, sample } from './curve.ts';
import type { KnownPattern } from './known.ts';

export interface TapeOptions {
  /** Distance between neighbouring pins along an edge of the tape, mm. */
  readonly spacing?: number;
  /** Width of the tape, mm. */
  readonly width?: number;
  readonly repeats?: number;
  /** Length of a repeat, mm. */
  readonly length?: number;
  /** How far the tape swings to each side, mm. */
  readonly swing?: number;
  /** How strongly the turns overhang: 0 is a plain wave, 0.6 nearly closes the loops. */
  readonly overhang?: number;
  /** The zigzag line of the workers inside the tape is drawn; else the tape is a cloth-stitch area. */
  readonly workers?: boolean;
  readonly tint?: string;
}

/**
 * A tape that swings to and fro, with pins evenly along both edges, plaits with picots that tie it to a zigzag
 * footside on the left and its own loops together, and picots on its outer turns.
 */
export function tape(options: TapeOptions = {}): KnownPattern {
  const { spacing = 2.8, width = 6, repeats = 3, length = 46, swing = 17, overhang = 0.45 } = options;
  const { workers = true, tint } = options;
  const build = new PatternBuilder();
  const total = length * repeats;
  const gap = 9;
  const axis = gap + swing + width / 2;
  const middle = sample(
    (t) => ({
      x: axis + swing * Math.sin(t),
      y: (length / (2 * Math.PI)) * (t - 2 * overhang * Math.sin(t) * Math.cos(t)),
    }),
    -Math.PI / 2,
    (2 * repeats - 0.5) * Math.PI,
    600 * repeats,
  ).map(({ x, y }) => ({ x, y: y + length / 4 }));

  const edges = [width / 2, -width / 2].map((offset) => {
    const line = beside(middle, offset);
    const count = Math.round(lengthOf(line) / spacing) + 1;
    return evenly(line, count, false).map((point) => build.pin(point, 'edge'));
  }) as [number[], number[]];
  for (const edge of edges) build.run(edge, 'trail-edge');
  if (workers) zigzag(build, middle, edges[0], edges[1]);
  else
    build.area(
      [...edges[0], ...[...edges[1]].reverse()].map((pin) => build.at(pin)),
      'cloth',
      tint,
    );

  const footSpacing = 0.9 * spacing;
  const feet = evenly(
    [
      { x: 0, y: 0 },
      { x: 0, y: total },
    ],
    Math.round(total / footSpacing) + 1,
    false,
  );
  const foot = feet.map((point) => build.pin(point, 'foot'));
  build.run(foot, 'footside');
  const inner = feet.slice(1).map((point, k) => build.pin({ x: 1.8, y: (point.y + feet[k]!.y) / 2 }, 'foot'));
  inner.forEach((pin, k) => {
    build.line(foot[k]!, pin);
    build.line(pin, foot[k + 1]!);
  });

  const nearest = (pool: readonly number[], to: Point): number =>
    pool.reduce((best, pin) =>
      distance(build.places[pin]!, to) < distance(build.places[best]!, to) ? pin : best,
    );
  const all = [...edges[0], ...edges[1]];
  const tie = (from: number, to: number): void => {
    const [a, b] = [build.places[from]!, build.places[to]!];
    build.plait([build.at(from), build.at(to)]);
    const size = distance(a, b);
    if (size < 4.5) return;
    for (const side of [-1, 1]) {
      const on = between(a, b, 0.5 + side * 0.08);
      const out = (side * 1.1) / size;
      build.picot(build.pin({ x: on.x + out * (b.y - a.y), y: on.y - out * (b.x - a.x) }, 'plait'));
    }
  };
  for (let k = 0; k < repeats; k++) {
    for (const shift of [-0.09, 0, 0.09]) {
      const y = (k + shift) * length;
      if (y < 0) continue;
      tie(nearest(inner, { x: 0, y }), nearest(all, { x: gap, y }));
    }
    const cross = { x: axis + 0.25 * swing, y: (k + 1) * length };
    if (k < repeats - 1) {
      const centre = build.pin(cross, 'plait');
      const ring = [-1, 1].map((side) => nearest(all, { x: cross.x, y: cross.y + side * 0.25 * length }));
      for (const pin of ring) tie(centre, pin);
    }
  }
  evenly(beside(middle, width / 2 + 1.4), Math.round(lengthOf(middle) / 4), false).forEach((point) => {
    if (point.x > axis + swing + width / 2) build.picot(build.pin(point, 'picot'));
  });
  return build.finish('Tape', 'tape', { step: { x: 0, y: length }, count: repeats });
}

/** The workers' path from edge to edge; where one edge is longer, two turns share a pin of the other. */
function zigzag(
  build: PatternBuilder,
  middle: readonly Point[],
  left: readonly number[],
  right: readonly number[],
): void {
  const along = (pin: number): number => nearestTo(middle, build.places[pin]!);
  const [leftAlong, rightAlong] = [left.map(along), right.map(along)];
  let [i, j] = [0, 0];
  build.line(left[0]!, right[0]!);
  while (i < left.length - 1 || j < right.length - 1) {
    const leftNext = leftAlong[i + 1] ?? Infinity;
    const rightNext = rightAlong[j + 1] ?? Infinity;
    if (leftNext <= rightNext) i++;
    else j++;
    build.line(left[i]!, right[j]!);
  }
}

/** Index of the point of a closely sampled line that lies nearest to a place. */
function nearestTo(line: readonly Point[], place: Point): number {
  let best = 0;
  line.forEach((point, k) => {
    if (distance(point, place) < distance(line[best]!, place)) best = k;
  });
  return best;
}
