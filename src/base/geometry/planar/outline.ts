import { cross, distance, type Point, subtract } from '../point.ts';
import type { Face } from './faces.ts';

/**
 * One closed line round a face: steps that end inside of it are passed over, and what lies loose in it and encloses
 * something is left out by going there and back along a free way. By indices of the net's places.
 */
export function outlineOf({ outer, holes }: Face, places: readonly Point[]): number[] {
  let outline = withoutSpurs(outer);
  const left = holes
    .map(withoutSpurs)
    .filter((hole) => hole.length > 2)
    .map((hole) => startingFarthestRight(hole, places))
    .sort((one, other) => places[other[0]!]!.x - places[one[0]!]!.x);
  for (const [at, hole] of left.entries()) {
    const from = nearestInSight(hole[0]!, outline, left.slice(at), places);
    outline = [...outline.slice(0, from + 1), ...hole, hole[0]!, ...outline.slice(from)];
  }
  return outline;
}

function startingFarthestRight(hole: readonly number[], places: readonly Point[]): number[] {
  const farthest = hole.reduce(
    (best, corner, at) => (places[corner]!.x > places[hole[best]!]!.x ? at : best),
    0,
  );
  return [...hole.slice(farthest), ...hole.slice(0, farthest)];
}

/**
 * Which corner of the outline is nearest to a place, of those that a straight way leads to past no wall. There is one:
 * holes are taken from the right, so that to the right of the place there is nothing but the outline.
 */
function nearestInSight(
  place: number,
  outline: readonly number[],
  holes: readonly (readonly number[])[],
  places: readonly Point[],
): number {
  const walls = [outline, ...holes].flatMap((round) =>
    round.map((corner, at) => [corner, round[(at + 1) % round.length]!] as const),
  );
  const isFree = (corner: number) =>
    walls.every(
      ([one, other]) =>
        one === place ||
        other === place ||
        one === corner ||
        other === corner ||
        !meet(places, place, corner, one, other),
    );
  const away = outline.map((corner) => distance(places[corner]!, places[place]!));
  const nearestFirst = outline.map((_, at) => at).sort((one, other) => away[one]! - away[other]!);
  // Only rounding could hide every way, and then the shortest does no harm.
  return nearestFirst.find((at) => isFree(outline[at]!)) ?? nearestFirst[0]!;
}

/** The same round without what is gone along out and back to an end; nothing where there is nothing else. */
export function withoutSpurs(round: readonly number[]): number[] {
  const kept: number[] = [];
  for (const corner of round) {
    if (kept.at(-2) === corner) kept.pop();
    else if (kept.at(-1) !== corner) kept.push(corner);
  }
  // The place where the round begins may itself lie on a spur.
  let [first, last] = [0, kept.length - 1];
  while (last > first) {
    if (kept[first] === kept[last]) last--;
    else if (last - first > 1 && kept[first + 1] === kept[last]) first++;
    else if (last - first > 1 && kept[last - 1] === kept[first]) last--;
    else break;
  }
  return last - first < 2 ? [] : kept.slice(first, last + 1);
}

function meet(places: readonly Point[], from: number, to: number, start: number, end: number): boolean {
  const side = (a: number, b: number, c: number) =>
    Math.sign(cross(subtract(places[b]!, places[a]!), subtract(places[c]!, places[a]!)));
  return side(from, to, start) !== side(from, to, end) && side(start, end, from) !== side(start, end, to);
}
