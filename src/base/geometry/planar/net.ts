import { cross, distance, type Point, subtract } from '../point.ts';
import { nearestShare } from '../segment.ts';
import { PlaceWeld } from './weld.ts';

/** From one place to another, by their indices. */
export type Step = readonly [from: number, to: number];

/** Straight steps that meet nowhere but at their ends. */
export interface Net {
  /** The places that were given, in their order, and after them those where steps cross. */
  readonly places: readonly Point[];
  /** Each pair of places once. */
  readonly steps: readonly Step[];
}

/**
 * Cuts steps wherever they cross or touch, so that they only meet at places. Places within `weld` of each other count
 * as one, which is the first of them, and a step goes through any place within `weld` of it: so steps that lie on each
 * other become one, whatever rounding did to them. Cost grows with the number of steps that lie beside each other.
 */
export function netOf(given: readonly Point[], steps: readonly Step[], weld: number): Net {
  const places = new PlaceWeld(weld);
  const welded = given.map((place) => places.addGiven(place));
  let cut = onlyOnce(steps.map(([from, to]) => [welded[from]!, welded[to]!]));
  // A step that is drawn to a place beside it bends a little, and may then cross another: rarely more than once.
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const cuts = cutsOf(cut, places, weld);
    if (cuts.size === 0) break;
    cut = onlyOnce(cut.flatMap((step, at) => pieces(step, cuts.get(at) ?? [])));
  }
  return { places: places.all, steps: cut };
}

const MOST_ROUNDS = 12;

interface Cut {
  readonly share: number;
  readonly place: number;
}

/** Where each step is to be cut, by its index. */
function cutsOf(steps: readonly Step[], places: PlaceWeld, weld: number): Map<number, Cut[]> {
  const cuts = new Map<number, Cut[]>();
  const cutAt = (step: number, share: number, place: number) => {
    if (steps[step]!.includes(place)) return;
    const found = cuts.get(step);
    if (found) found.push({ share, place });
    else cuts.set(step, [{ share, place }]);
  };
  for (const [one, other] of neighbours(steps, places.all, weld)) {
    const touched = touches(steps, one, other, places.all, weld, cutAt);
    if (touched || steps[one]!.some((place) => steps[other]!.includes(place))) continue;
    const shares = crossing(steps[one]!, steps[other]!, places.all);
    if (!shares) continue;
    const [from, to] = steps[one]!.map((place) => places.all[place]!) as [Point, Point];
    const place = places.add({
      x: from.x + (to.x - from.x) * shares[0],
      y: from.y + (to.y - from.y) * shares[0],
    });
    cutAt(one, shares[0], place);
    cutAt(other, shares[1], place);
  }
  return cuts;
}

/** Cuts each of two steps where an end of the other lies on it; whether there was such an end. */
function touches(
  steps: readonly Step[],
  one: number,
  other: number,
  places: readonly Point[],
  weld: number,
  cutAt: (step: number, share: number, place: number) => void,
): boolean {
  let touched = false;
  for (const [step, ends] of [
    [one, steps[other]!],
    [other, steps[one]!],
  ] as const) {
    const [from, to] = steps[step]!.map((place) => places[place]!) as [Point, Point];
    for (const end of ends) {
      if (steps[step]!.includes(end)) continue;
      const place = places[end]!;
      const share = nearestShare(place, from, to);
      const nearest = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
      if (distance(place, nearest) > weld) continue;
      cutAt(step, share, end);
      touched = true;
    }
  }
  return touched;
}

/** How far along each of two steps they cross, between their ends; null where they do not. */
function crossing(one: Step, other: Step, places: readonly Point[]): readonly [number, number] | null {
  const [from, start] = [places[one[0]]!, places[other[0]]!];
  const along = subtract(places[one[1]]!, from);
  const athwart = subtract(places[other[1]]!, start);
  const across = cross(along, athwart);
  if (across === 0) return null;
  const off = subtract(start, from);
  const shares = [cross(off, athwart) / across, cross(off, along) / across] as const;
  return shares.every((share) => share > 0 && share < 1) ? shares : null;
}

/** Every two steps whose boxes, grown by `reach`, meet. */
function* neighbours(
  steps: readonly Step[],
  places: readonly Point[],
  reach: number,
): Generator<readonly [number, number]> {
  const boxes = steps.map(([from, to], at) => {
    const [a, b] = [places[from]!, places[to]!];
    return {
      at,
      left: Math.min(a.x, b.x),
      right: Math.max(a.x, b.x) + reach,
      top: Math.min(a.y, b.y),
      bottom: Math.max(a.y, b.y) + reach,
    };
  });
  boxes.sort((one, other) => one.left - other.left || one.at - other.at);
  for (const [rank, one] of boxes.entries()) {
    for (let next = rank + 1; next < boxes.length && boxes[next]!.left <= one.right; next++) {
      const other = boxes[next]!;
      if (other.top <= one.bottom && one.top <= other.bottom) yield [one.at, other.at];
    }
  }
}

function pieces([from, to]: Step, cuts: readonly Cut[]): Step[] {
  const stops = cuts.toSorted((one, other) => one.share - other.share).map(({ place }) => place);
  const ends = [from, ...stops, to];
  return ends.slice(1).map((end, at) => [ends[at]!, end]);
}

/** Each pair of different places once, whichever way round. */
function onlyOnce(steps: readonly Step[]): Step[] {
  const known = new Map<string, Step>();
  for (const [from, to] of steps) {
    if (from !== to) known.set(from < to ? `${from} ${to}` : `${to} ${from}`, [from, to]);
  }
  return [...known.values()];
}
