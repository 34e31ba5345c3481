import { affineFit } from '#base/fit/affine.ts';
import { type Camera, type CameraFit, fitCamera, fromPixel } from '#base/fit/camera.ts';
import { applyHomography, fitHomography, type Homography } from '#base/fit/homography.ts';
import type { PixelPoint, Point } from '#base/geometry/point.ts';
import type { Neighbourhood } from './neighbours.ts';
import { type Guess, NEAR, type Target } from './seek.ts';

/** Pairs of a spot and a pin, by index. */
export type Pair = readonly [spot: number, pin: number];

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/**
 * Carries a guess from its seed outward over the whole picture: a homography is fitted to what is paired, and reaches
 * half as far again for the next pairs. Null where it finds no support on the way.
 */
export function grow(guess: Guess, spots: Neighbourhood, target: Target): Pair[] | null {
  const seed = spots.points[guess.pairs[0]![0]]!;
  const order = spots.points
    .map(({ x, y }, spot) => ({ spot, away: Math.hypot(x - seed.x, y - seed.y) }))
    .sort((a, b) => a.away - b.away);
  let pairs: Pair[] = guess.pairs.map(([spot, pin]) => [spot, pin]);
  let reach = Math.max(...pairs.map(([spot]) => distanceOf(spots.points[spot]!, seed)));
  for (;;) {
    const map = fitted(pairs, spots, target);
    if (map === null) return null;
    const whole = reach >= order.at(-1)!.away;
    reach *= 1.4;
    const inside = order.findIndex(({ away }) => away > reach);
    const within = inside < 0 ? order : order.slice(0, inside);
    const next = paired(
      within.map(({ spot }) => spot),
      spots,
      target,
      (place) => applyHomography(map, place),
    );
    if (next.length < Math.max(8, 0.4 * within.length))
      return next.length >= 0.4 * target.pins.points.length ? next : null;
    pairs = next;
    if (whole) return pairs;
  }
}

function fitted(pairs: readonly Pair[], spots: Neighbourhood, { pins }: Target): Homography | null {
  const from = pairs.map(([spot]) => spots.points[spot]!);
  const to = pairs.map(([, pin]) => pins.points[pin]!);
  if (pairs.length < 24) {
    const map = affineFit(from, to);
    return map && [map.a, map.c, map.e, map.b, map.d, map.f, 0, 0, 1];
  }
  return fitHomography(from, to);
}

/** Spots and the pins they land on, one to one: a pin goes to the spot that comes nearest. */
export function paired(
  which: readonly number[],
  spots: Neighbourhood,
  { pins, grid }: Target,
  map: (place: Point) => Point,
): Pair[] {
  const best = new Map<number, { spot: number; away: number }>();
  for (const spot of which) {
    const place = map(spots.points[spot]!);
    const pin = grid.nearest(place.x, place.y, NEAR * pins.spacing * 1.2);
    if (pin < 0) continue;
    const away = distanceOf(place, pins.points[pin]!);
    if (away > NEAR * Math.max(pins.nearest[pin]!, 0.6 * pins.spacing)) continue;
    const other = best.get(pin);
    if (other === undefined || away < other.away) best.set(pin, { spot, away });
  }
  return [...best].map(([pin, { spot }]) => [spot, pin] as const);
}

/** The camera that a set of pairs tells, found again with the pairs that it tells itself until nothing changes. */
export function settle(
  pairs: readonly Pair[],
  spots: Neighbourhood,
  target: Target,
  picture: PictureSize,
): (CameraFit & { readonly pairs: readonly Pair[] }) | null {
  let now = pairs;
  let fit: CameraFit | null = null;
  for (let round = 0; round < 5; round++) {
    fit = fitCamera(
      now.map(([, pin]) => target.pins.points[pin]!),
      now.map(([spot]) => pixelOf(spots.points[spot]!)),
      picture,
    );
    if (fit === null || !isSane(fit.camera)) return null;
    const read = fromPixel(fit.camera);
    const next = paired(
      spots.points.map((_, k) => k),
      spots,
      target,
      (place) => read(pixelOf(place)),
    );
    const same = next.length === now.length;
    now = next;
    if (now.length < 8) return null;
    if (same && round > 0) break;
  }
  return fit && { ...fit, pairs: now };
}

const isSane = ({ homography, k1 }: Camera): boolean =>
  homography.every(Number.isFinite) && Math.abs(k1) < 0.2;

/** Spots are kept as plain points (x a column, y a row) for the common search; this says again that they are pixels. */
export const pixelOf = ({ x, y }: Point): PixelPoint => ({ column: x, row: y });

const distanceOf = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
