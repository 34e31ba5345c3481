import { distance, type Point } from '#base/geometry/point.ts';
import type { PointIndex } from '#base/geometry/point-index.ts';

/** Neighbours that are looked at, and how far they may lie, in their usual distance from each other. */
const NEIGHBOURS = 30;
const AROUND = 3.3;
/** How near, in that distance, two guesses name the same place, and how far from all pins it must be. */
const SAME = 0.12;
const CLEAR = 0.7;
/** So many pairs of neighbours have to name a place before it is taken for meant. */
const AGREED = 3;

/**
 * The place near `at` that lies in line with the pins round it: half-way between two of them, or as far on as the one
 * lies from the other, so that at least three pairs agree. Null where there is none within `reach`.
 */
export function placeInLine(
  at: Point,
  reach: number,
  pins: readonly Point[],
  index: PointIndex,
  except: number | null,
): Point | null {
  const around = neighboursOf(at, pins, index, except);
  const apart = usualDistance(around);
  if (apart === null) return null;
  // Seen from far away a touch reaches over many pins; a pin still falls only into the gap that it lies in.
  const near = Math.min(reach, apart / 2);
  const guesses = guessesFrom(around.filter((pin) => distance(at, pin) <= AROUND * apart)).filter(
    (guess) => distance(guess, at) <= near,
  );
  let best: { readonly place: Point; readonly pairs: number; readonly away: number } | null = null;
  for (const guess of guesses) {
    const agreed = guesses.filter((other) => distance(guess, other) <= SAME * apart);
    const place = middleOf(agreed);
    const away = distance(place, at);
    if (best && (agreed.length < best.pairs || (agreed.length === best.pairs && away >= best.away))) continue;
    if (around.some((pin) => distance(pin, place) < CLEAR * apart)) continue;
    best = { place, pairs: agreed.length, away };
  }
  return best && best.pairs >= AGREED ? best.place : null;
}

/** From the nearest few of some pins to the next of them, in the middle of all; null where there are too few. */
function usualDistance(pins: readonly Point[]): number | null {
  const distances = pins.slice(0, 8).map((one) => {
    return Math.min(...pins.filter((other) => other !== one).map((other) => distance(one, other)));
  });
  const middle = distances.sort((one, other) => one - other)[Math.floor(distances.length / 2)];
  return middle !== undefined && Number.isFinite(middle) && middle > 0 ? middle : null;
}

/** The pins nearest to a place, the nearest first. */
function neighboursOf(
  at: Point,
  pins: readonly Point[],
  index: PointIndex,
  except: number | null,
): readonly Point[] {
  for (let radius = 1; radius < 1000; radius *= 2) {
    const found = index.within(at, radius).filter((pin) => pin !== except);
    if (found.length < NEIGHBOURS && radius < 500) continue;
    return found
      .map((pin) => pins[pin]!)
      .sort((one, other) => distance(at, one) - distance(at, other))
      .slice(0, NEIGHBOURS);
  }
  return [];
}

function guessesFrom(pins: readonly Point[]): Point[] {
  const guesses: Point[] = [];
  for (const [first, one] of pins.entries()) {
    for (const other of pins.slice(first + 1)) {
      guesses.push({ x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 });
      guesses.push({ x: 2 * one.x - other.x, y: 2 * one.y - other.y });
      guesses.push({ x: 2 * other.x - one.x, y: 2 * other.y - one.y });
    }
  }
  return guesses;
}

function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((total, { x, y }) => ({ x: total.x + x, y: total.y + y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}
