import Delaunator from 'delaunator';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import type { PinLine, RoundHole } from './line.ts';
import { withoutHatching } from './line-hatching.ts';
import { greyAt, profileAlong, type Ruler, rulerFor, type Step, stepAt } from './line-profile.ts';
import { Follower, spokesOf } from './line-spokes.ts';

/** Lines seen on less of their way than this are not told. */
const LEAST_SEEN = 0.62;
/** Two lines from one hole that part by less than this (radians) are the same ink seen twice. */
const SAME_INK = 0.1;

/**
 * Which holes are joined by a drawn working line: `from < to`, each pair once. A line that runs through several holes is
 * told piece by piece. Thick lines (gimps) and solid tints do not count: a working line is light on both sides.
 */
export function findLines(picture: GreyPicture, holes: readonly RoundHole[]): PinLine[] {
  if (holes.length < 2) return [];
  const ruler = rulerFor(medianOf(holes.map((hole) => hole.diameter)));
  const follower = new Follower(picture, holes, ruler);
  const neighbours = neighbourPairs(holes);
  const near = neighbours
    .filter(([from, to]) => !follower.isBlocked(from, to))
    .map((pair) => ({ pair, steps: stepsBetween(picture, holes, pair, ruler) }));
  const contrast = lineContrast(
    near.map(({ steps }) => steps),
    dotContrast(picture, holes, ruler),
  );
  const found = near.flatMap(({ pair, steps }) => told(pair, steps, contrast, ruler));

  const known = new Set(near.map(({ pair }) => keyOf(pair)));
  const consider = (pair: Pair): void => {
    if (known.has(keyOf(pair))) return;
    known.add(keyOf(pair));
    if (!glimpsed(picture, holes, pair, ruler, contrast) || follower.isBlocked(...pair)) return;
    found.push(...told(pair, stepsBetween(picture, holes, pair, ruler), contrast, ruler));
  };
  for (const pair of pairsOnceRemoved(holes.length, neighbours)) consider(pair);
  const directions = directionsOf(holes, found);
  holes.forEach((hole, from) => {
    for (const angle of spokesOf(picture, hole, ruler, contrast)) {
      if (directions[from]!.some((other) => turnBetween(angle, other) < SAME_INK)) continue;
      const to = follower.follow(from, angle, contrast);
      if (to !== null) consider(from < to ? [from, to] : [to, from]);
    }
  });
  const lines = withoutEchoes(holes, found);
  return withoutHatching(picture, holes, lines, ruler, contrast).sort(
    (a, b) => a.from - b.from || a.to - b.to,
  );
}

type Pair = readonly [number, number];

const keyOf = ([from, to]: Pair): string => `${from} ${to}`;

/** Every pair of Delaunay neighbours; along the line where all holes lie on one. */
function neighbourPairs(holes: readonly RoundHole[]): Pair[] {
  const { triangles, halfedges, hull } = new Delaunator(holes.flatMap((hole) => [hole.column, hole.row]));
  const pair = (a: number, b: number): Pair => (a < b ? [a, b] : [b, a]);
  if (triangles.length === 0) return [...hull.subarray(1)].map((hole, k) => pair(hull[k]!, hole));
  const pairs: Pair[] = [];
  for (let edge = 0; edge < triangles.length; edge++) {
    if (halfedges[edge]! > edge) continue;
    pairs.push(pair(triangles[edge]!, triangles[edge % 3 === 2 ? edge - 2 : edge + 1]!));
  }
  return pairs;
}

/** Pairs that are no neighbours and share one: long lines of a band lead past the next dot. */
function* pairsOnceRemoved(count: number, neighbours: readonly Pair[]): Generator<Pair> {
  const around: number[][] = Array.from({ length: count }, () => []);
  for (const [a, b] of neighbours) {
    around[a]!.push(b);
    around[b]!.push(a);
  }
  for (const ring of around) {
    for (const a of ring) for (const b of ring) if (a < b) yield [a, b];
  }
}

/** A first look at every fifth step or so, which rules out most pairs. */
function glimpsed(
  picture: GreyPicture,
  holes: readonly RoundHole[],
  [from, to]: Pair,
  ruler: Ruler,
  contrast: number,
): boolean {
  const a = holes[from]!;
  const b = holes[to]!;
  const size = Math.hypot(b.column - a.column, b.row - a.row);
  const [x, y] = [(b.column - a.column) / size, (b.row - a.row) / size];
  const clear = 0.7 * ruler.dot;
  const looks = Math.max(2, Math.min(12, Math.round((size - 2 * clear) / (5 * ruler.unit))));
  let dark = 0;
  for (let k = 0; k < looks; k++) {
    const way = clear + ((k + 0.5) / looks) * (size - 2 * clear);
    const at = { column: a.column + way * x, row: a.row + way * y };
    if (stepAt(picture, at, x, y, ruler).contrast >= contrast) dark++;
    if (dark + looks - 1 - k < 0.5 * looks) return false;
  }
  return true;
}

/** What is seen on the way between two dots, clear of the dots themselves. */
function stepsBetween(
  picture: GreyPicture,
  holes: readonly RoundHole[],
  [from, to]: Pair,
  ruler: Ruler,
): Step[] {
  const a = holes[from]!;
  const b = holes[to]!;
  const size = Math.hypot(b.column - a.column, b.row - a.row);
  const rim = 0.12 * ruler.dot;
  const start = Math.min(a.diameter / 2 + rim, 0.45 * size) / size;
  const end = 1 - Math.min(b.diameter / 2 + rim, 0.45 * size) / size;
  const at = (t: number): PixelPoint => ({
    column: a.column + t * (b.column - a.column),
    row: a.row + t * (b.row - a.row),
  });
  return profileAlong(picture, at(start), at(end), ruler);
}

/**
 * From which contrast on a step counts as ink: between what bare paper shows and what lines show. The ways between
 * neighbours fall into two kinds, and the limit that parts them best is taken (Otsu 1979), a little nearer the paper than
 * the ink, since worn lines are fainter than most. Where all are of one kind that limit means nothing, so it never rises
 * above half of what the strongest show, nor falls under what noise and a trace of the dots' own ink give.
 */
function lineContrast(ways: readonly (readonly Step[])[], dots: number): number {
  const typical = ways.map((steps) => medianOf(steps.map((step) => step.contrast))).sort((a, b) => a - b);
  const count = typical.length;
  const total = typical.reduce((sum, value) => sum + value, 0);
  let best = 0;
  let limit = Infinity;
  let lower = 0;
  for (let split = 1; split < count; split++) {
    lower += typical[split - 1]!;
    const apart = lower / split - (total - lower) / (count - split);
    const parted = apart * apart * split * (count - split);
    if (parted <= best) continue;
    best = parted;
    limit = (0.6 * lower) / split + (0.4 * (total - lower)) / (count - split);
  }
  const strongest = typical[Math.floor(0.9 * (count - 1))] ?? 0;
  const noise = typical[Math.floor(0.02 * count)] ?? 0;
  return Math.max(Math.min(limit, 0.55 * strongest), Math.min(2 * noise, 0.4 * dots), 0.12 * dots, 5);
}

/** How much darker than the paper round it a dot usually is, grey levels. */
function dotContrast(picture: GreyPicture, holes: readonly RoundHole[], ruler: Ruler): number {
  const reach = 1.1 * ruler.dot;
  return medianOf(
    holes.map(({ column, row }) => {
      const round = Array.from({ length: 12 }, (_, k) => {
        const angle = (Math.PI * k) / 6;
        return greyAt(picture, column + reach * Math.cos(angle), row + reach * Math.sin(angle));
      });
      return round.sort((a, b) => a - b)[9]! - greyAt(picture, column, row);
    }),
  );
}

/** Judges what was seen on the way between two holes; no line, or one. */
function told([from, to]: Pair, steps: readonly Step[], contrast: number, ruler: Ruler): PinLine[] {
  const seen = steps.flatMap((step, at) => (step.contrast >= contrast ? [{ at, ...step }] : []));
  if (seen.length < 0.4 * steps.length) return [];
  const ink = medianOf(seen.map((step) => step.grey));
  // Ink on every side, as in the knot where a fan's lines meet or where a gimp crosses, says nothing either way.
  const blind = steps.filter((step) => step.contrast < contrast && step.grey < ink + 0.4 * contrast).length;
  const beside = drift(seen, steps.length);
  const straight = seen.filter(({ at, offset }) => Math.abs(offset - beside(at)) <= 1.3 * ruler.unit).length;
  const strength = straight / (steps.length - Math.min(blind, 0.5 * steps.length));
  return strength >= LEAST_SEEN ? [{ from, to, strength: Math.min(1, strength) }] : [];
}

/** How far beside the way a straight line runs, by step: through the medians of the two halves of what was seen. */
function drift(seen: readonly { at: number; offset: number }[], count: number): (at: number) => number {
  const halves = [seen.filter(({ at }) => at < count / 2), seen.filter(({ at }) => at >= count / 2)].map(
    (half) => ({
      at: medianOf(half.map(({ at }) => at)),
      offset: medianOf(half.map(({ offset }) => offset)),
    }),
  );
  const [first, second] = halves as [{ at: number; offset: number }, { at: number; offset: number }];
  if (seen.every(({ at }) => at < count / 2)) return () => first.offset;
  if (seen.every(({ at }) => at >= count / 2)) return () => second.offset;
  const slope = (second.offset - first.offset) / Math.max(1, second.at - first.at);
  return (at) => first.offset + slope * (at - first.at);
}

function directionsOf(holes: readonly RoundHole[], lines: readonly PinLine[]): number[][] {
  const directions: number[][] = holes.map(() => []);
  for (const { from, to } of lines) {
    directions[from]!.push(angleOf(holes[from]!, holes[to]!));
    directions[to]!.push(angleOf(holes[to]!, holes[from]!));
  }
  return directions;
}

/** Drops the weaker of two lines that leave a hole in nearly the same direction. */
function withoutEchoes(holes: readonly RoundHole[], lines: readonly PinLine[]): PinLine[] {
  const leaving: { line: PinLine; angle: number }[][] = holes.map(() => []);
  for (const line of lines) {
    leaving[line.from]!.push({ line, angle: angleOf(holes[line.from]!, holes[line.to]!) });
    leaving[line.to]!.push({ line, angle: angleOf(holes[line.to]!, holes[line.from]!) });
  }
  const echoes = new Set<PinLine>();
  for (const around of leaving) {
    around.sort((a, b) => b.line.strength - a.line.strength);
    around.forEach(({ line, angle }, k) => {
      if (echoes.has(line) || line.strength > 0.9) return;
      const stronger = around.slice(0, k).filter((other) => !echoes.has(other.line));
      if (stronger.some((other) => turnBetween(angle, other.angle) < SAME_INK)) echoes.add(line);
    });
  }
  return lines.filter((line) => !echoes.has(line));
}

const angleOf = (a: PixelPoint, b: PixelPoint): number => Math.atan2(b.row - a.row, b.column - a.column);

function turnBetween(a: number, b: number): number {
  const turn = Math.abs(a - b) % (2 * Math.PI);
  return Math.min(turn, 2 * Math.PI - turn);
}

function medianOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
}
