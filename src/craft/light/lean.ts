import { boxOf, heightOf, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Hole } from './holes.ts';
import type { LeaningZone } from './judgement.ts';
import { aspectOf, directionOf, leanOf } from './shape.ts';

/** Fewer holes than these tell nothing of the hand. */
const FEWEST = 6;
/** Holes of a zone that are together less oval than this are round enough. */
const LEAST_ASPECT = 1.06;
/** How many times a mean must exceed its own uncertainty to be believed. */
const SURE = 3.5;

/**
 * Where on the card the needle leant. The pattern is taken in nine parts, and the shapes of the holes of each are put
 * together as directions of double the angle, so that ovals that lie any which way cancel out. Each hole's shape is
 * relative to those about it, so that only what is not common to the whole neighbourhood counts as a lean.
 */
export function leaningZones(
  pins: readonly Point[],
  at: readonly (Hole | null)[],
  cardThickness: number | undefined,
): LeaningZone[] {
  const box = boxOf(pins);
  const zones: LeaningZone[] = [];
  for (const [row, down] of (['top', 'middle', 'bottom'] as const).entries()) {
    for (const [column, across] of (['left', 'middle', 'right'] as const).entries()) {
      const inside = pins.flatMap((pin, index) => {
        const hole = at[index];
        const c = Math.min(2, Math.floor((3 * (pin.x - box.left)) / (widthOf(box) || 1)));
        const r = Math.min(2, Math.floor((3 * (pin.y - box.top)) / (heightOf(box) || 1)));
        return hole && c === column && r === row ? [{ pin, hole }] : [];
      });
      const zone = leaning(inside, cardThickness);
      if (zone !== null) zones.push({ across, down, ...zone });
    }
  }
  return zones;
}

function leaning(
  holes: readonly { readonly pin: Point; readonly hole: Hole }[],
  cardThickness: number | undefined,
): Omit<LeaningZone, 'across' | 'down'> | null {
  if (holes.length < FEWEST) return null;
  const ovals = holes.map(({ hole }) => {
    const stretch = Math.log(aspectOf(hole.shape));
    const angle = 2 * directionOf(hole.shape);
    return { x: stretch * Math.cos(angle), y: stretch * Math.sin(angle) };
  });
  const mean = meanOf(ovals);
  const size = Math.hypot(mean.x, mean.y);
  const aspect = Math.exp(size);
  if (aspect < LEAST_ASPECT || size < SURE * uncertainty(ovals, mean)) return null;
  const angle = Math.atan2(mean.y, mean.x) / 2;
  const axis = { x: Math.cos(angle), y: Math.sin(angle) };
  const steps = holes.map(({ pin, hole }) => ({
    x: (hole.x - pin.x) * axis.x + (hole.y - pin.y) * axis.y,
    y: 0,
  }));
  const step = meanOf(steps);
  const sure = Math.abs(step.x) > SURE * uncertainty(steps, step);
  const diameter = meanOf(holes.map(({ hole }) => ({ x: hole.diameter, y: 0 }))).x;
  return {
    holes: holes.length,
    aspect,
    angle: (angle * 180) / Math.PI,
    towards: sure ? { x: axis.x * Math.sign(step.x), y: axis.y * Math.sign(step.x) } : null,
    lean: cardThickness ? leanOf(diameter, aspect, cardThickness) : null,
  };
}

function meanOf(points: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  return { x, y };
}

/** Standard error of a mean of plane vectors. */
function uncertainty(points: readonly Point[], mean: Point): number {
  let squares = 0;
  for (const { x, y } of points) squares += (x - mean.x) ** 2 + (y - mean.y) ** 2;
  return Math.sqrt(squares / (points.length * Math.max(1, points.length - 1)));
}
