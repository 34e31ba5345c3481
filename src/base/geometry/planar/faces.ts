import { type Box, boxHolds, boxOf } from '../box.ts';
import { cross, type Point, subtract } from '../point.ts';
import { isInside } from '../polygon.ts';
import type { Net } from './net.ts';

/** A part of the plane that a net encloses, by the indices of its corners. The inside lies on the same side all along. */
export interface Face {
  /** Round it; a step that ends inside of it is gone along out and back. */
  readonly outer: readonly number[];
  /** Round each part of the net that lies loose in it; of one that encloses nothing, out and back. */
  readonly holes: readonly (readonly number[])[];
  /** What lies between. */
  readonly area: number;
}

/** Every face that a net encloses. The one that reaches to infinity is not among them. */
export function facesOf({ places, steps }: Net): Face[] {
  const rounds = roundsOf(places, steps);
  const parts = new Map<number, Round[]>();
  for (const round of rounds) {
    const known = parts.get(round.part);
    if (known) known.push(round);
    else parts.set(round.part, [round]);
  }
  const outsides: Round[] = [];
  const insides: (Round & { readonly holes: Round[]; readonly box: Box })[] = [];
  for (const part of parts.values()) {
    // Of all ways round one part, the one outside of it runs against the others and encloses what they do together.
    const outside = part.reduce((least, round) => (round.area < least.area ? round : least));
    outsides.push(outside);
    for (const round of part) {
      if (round === outside) continue;
      insides.push({ ...round, holes: [], box: boxOf(round.corners.map((corner) => places[corner]!)) });
    }
  }
  insides.sort((one, other) => one.area - other.area);
  const outlines = insides.map(({ corners }) => corners.map((corner) => places[corner]!));
  for (const outside of outsides) {
    const place = places[outside.corners[0]!]!;
    const around = insides.find(
      (inside, at) =>
        inside.part !== outside.part && boxHolds(inside.box, place) && isInside(outlines[at]!, place),
    );
    around?.holes.push(outside);
  }
  return insides.map(({ corners, area, holes }) => ({
    outer: corners,
    holes: holes.map((hole) => hole.corners),
    area: holes.reduce((rest, hole) => rest + hole.area, area),
  }));
}

/** The smallest face that holds a place, or null where nothing encloses it. */
export function faceAt(faces: readonly Face[], places: readonly Point[], place: Point): Face | null {
  const holds = (corners: readonly number[]) =>
    isInside(
      corners.map((corner) => places[corner]!),
      place,
    );
  return faces.find(({ outer, holes }) => holds(outer) && !holes.some(holds)) ?? null;
}

/** One way round along the steps with the same side always at hand. */
interface Round {
  readonly corners: readonly number[];
  /** Positive where it runs clockwise on the sheet. */
  readonly area: number;
  /** Which connected part of the net it belongs to. */
  readonly part: number;
}

function roundsOf(places: readonly Point[], steps: Net['steps']): Round[] {
  const ways = waysFrom(places, steps);
  const parts = partsOf(places.length, steps);
  const gone = new Set<string>();
  const rounds: Round[] = [];
  for (const [from, to] of steps.flatMap(([a, b]) => [[a, b] as const, [b, a] as const])) {
    if (gone.has(`${from} ${to}`)) continue;
    const corners: number[] = [];
    let [here, next] = [from, to];
    while (!gone.has(`${here} ${next}`)) {
      gone.add(`${here} ${next}`);
      corners.push(here);
      const turns = ways.get(next)!;
      [here, next] = [next, turns[(turns.indexOf(here) + turns.length - 1) % turns.length]!];
    }
    rounds.push({ corners, area: areaRound(corners, places), part: parts(from) });
  }
  return rounds;
}

/** The places that each place has a step to, in the order of their directions. */
function waysFrom(places: readonly Point[], steps: Net['steps']): Map<number, number[]> {
  const ways = new Map<number, number[]>();
  const add = (from: number, to: number) => {
    const known = ways.get(from);
    if (known) known.push(to);
    else ways.set(from, [to]);
  };
  for (const [from, to] of steps) {
    add(from, to);
    add(to, from);
  }
  for (const [from, all] of ways) {
    const angles = new Map(
      all.map((to) => {
        const { x, y } = subtract(places[to]!, places[from]!);
        return [to, Math.atan2(y, x)];
      }),
    );
    all.sort((one, other) => angles.get(one)! - angles.get(other)!);
  }
  return ways;
}

/** Tells of a place to which connected part of the net it belongs. */
function partsOf(count: number, steps: Net['steps']): (place: number) => number {
  const leads = Array.from({ length: count }, (_, place) => place);
  const head = (place: number): number => {
    let at = place;
    while (leads[at] !== at) {
      leads[at] = leads[leads[at]!]!;
      at = leads[at]!;
    }
    return at;
  };
  for (const [from, to] of steps) leads[head(from)] = head(to);
  return head;
}

/** Measured from one of its corners, so that a small shape far from the origin loses nothing to rounding. */
function areaRound(corners: readonly number[], places: readonly Point[]): number {
  const first = places[corners[0]!]!;
  let twice = 0;
  for (let at = 1; at < corners.length; at++) {
    const from = subtract(places[corners[at - 1]!]!, first);
    twice += cross(from, subtract(places[corners[at]!]!, first));
  }
  return twice / 2;
}
