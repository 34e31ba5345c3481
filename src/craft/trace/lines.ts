import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { dotContrast, lineContrast, medianOf } from './lines/contrast.ts';
import { withoutHatching } from './lines/hatching.ts';
import type { PinLine, RoundHole } from './lines/line.ts';
import { neighbourPairs, type Pair, pairsOnceRemoved } from './lines/pairs.ts';
import { Looker, rulerFor } from './lines/profile.ts';
import { Follower, spokesOf } from './lines/spokes.ts';
import { glimpsed, lineOn, profileBetween } from './lines/verdict.ts';

/** Two lines from one hole that part by less than this (radians) are the same ink seen twice. */
const SAME_INK = 0.1;

/**
 * Which holes are joined by a drawn working line: `from < to`, each pair once. A line that runs through several holes is
 * told piece by piece. Thick lines (gimps) and solid tints do not count: a working line is light on both sides.
 */
export function findLines(picture: GreyPicture, holes: readonly RoundHole[]): PinLine[] {
  if (holes.length < 2) return [];
  const ruler = rulerFor(medianOf(Float32Array.from(holes, (hole) => hole.diameter)));
  const looker = new Looker(picture, ruler);
  const follower = new Follower(picture, holes, looker);
  const neighbours = neighbourPairs(holes);
  const near = neighbours
    .filter(([from, to]) => !follower.isBlocked(from, to))
    .map((pair) => ({ pair, way: profileBetween(looker, holes[pair[0]]!, holes[pair[1]]!) }));
  const contrast = lineContrast(
    near.map(({ way }) => way),
    dotContrast(picture, holes, ruler),
  );
  const found = near.flatMap(({ pair, way }) => lineOn(pair, way, contrast, ruler) ?? []);

  const known = new Set(neighbours.map(([from, to]) => from * holes.length + to));
  const consider = (pair: Pair): void => {
    const [from, to] = pair;
    const key = from * holes.length + to;
    if (known.has(key)) return;
    known.add(key);
    if (!glimpsed(looker, holes[from]!, holes[to]!, contrast) || follower.isBlocked(from, to)) return;
    const line = lineOn(pair, profileBetween(looker, holes[from]!, holes[to]!), contrast, ruler);
    if (line) found.push(line);
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
  return withoutHatching(picture, holes, lines, looker, contrast).sort(
    (a, b) => a.from - b.from || a.to - b.to,
  );
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
