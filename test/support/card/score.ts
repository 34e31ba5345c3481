import { fromPixel, toPixel } from '#base/fit/camera.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import type { CardPhoto } from './photo.ts';

/** How far a judgement is right. */
export interface CardScore {
  /** Faults of all kinds found, found where there are none, and overlooked. */
  readonly right: number;
  readonly wrong: number;
  readonly overlooked: number;
  readonly f1: number;
  readonly missingOverlooked: number;
  readonly soundCalledMissing: number;
  /** Root mean square of the distance between where a hole is and where it was seen, mm. */
  readonly placeError: number;
}

/** Extra holes count as found within 0.35 mm. */
const SAME_PLACE = 0.35;

/**
 * Compares a judgement with the truth, pin by pin as the photo shows them: a pattern that is carried on to itself by a turn
 * may be given to the holes in several ways, and each is right.
 */
export function scoreOf(pins: readonly Point[], photo: CardPhoto, judgement: Judgement): CardScore {
  const { card, camera } = photo;
  const own = ownNames(pins, photo, judgement);
  const named = (indices: readonly number[]): number[] => indices.map((index) => own[index]!);
  let [right, wrong, overlooked] = [0, 0, 0];
  for (const kind of ['missing', 'offCentre', 'oval'] as const) {
    const [found, truth] = [new Set(named(judgement[kind])), new Set(card.faults[kind])];
    for (const index of found) truth.has(index) ? right++ : wrong++;
    for (const index of truth) if (!found.has(index)) overlooked++;
  }
  const read = fromPixel(camera);
  const placeOf = (place: Point): Point => read(toPixel(judgement.fit.camera, place));
  const left = [...card.extra];
  for (const extra of judgement.extra) {
    const { x, y } = placeOf(extra);
    const at = left.findIndex((hole) => Math.hypot(hole.x - x, hole.y - y) < SAME_PLACE);
    if (at < 0) wrong++;
    else {
      right++;
      left.splice(at, 1);
    }
  }
  overlooked += left.length;
  let [squares, count] = [0, 0];
  judgement.pins.forEach(({ index, dx, dy }) => {
    const hole = card.holes[own[index]!];
    if (!hole || dx === null || dy === null) return;
    // how far the hole is off its pin, seen with the true camera, in the pattern's own place of it
    const seen = placeOf({ x: pins[index]!.x + dx, y: pins[index]!.y + dy });
    squares += (seen.x - hole.x) ** 2 + (seen.y - hole.y) ** 2;
    count++;
  });
  const truth = new Set(card.faults.missing);
  const missing = new Set(named(judgement.missing));
  return {
    right,
    wrong,
    overlooked,
    f1: (2 * right) / Math.max(1, 2 * right + wrong + overlooked),
    missingOverlooked: [...truth].filter((index) => !missing.has(index)).length,
    soundCalledMissing: [...missing].filter((index) => !truth.has(index)).length,
    placeError: Math.sqrt(squares / Math.max(1, count)),
  };
}

/** The true name of the pin that the judgement calls by each index. */
function ownNames(pins: readonly Point[], { camera }: CardPhoto, { fit }: Judgement): number[] {
  const index = new PointIndex(pins);
  const read = fromPixel(camera);
  return pins.map((pin) => index.nearest(read(toPixel(fit.camera, pin)), 0.3) ?? -1);
}
