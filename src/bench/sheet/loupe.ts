import type { ScreenPoint, ViewSize } from './camera.ts';
import { addCross } from './cross.ts';

/** The largest that has room is taken. */
const RADII = [64, 52, 40, 30] as const;
/** From the finger's middle to the loupe's edge. */
const CLEAR = 46;
const GROWN = 2.2;

/** Where a loupe stands, and its radius, CSS pixels. */
export interface LoupePlace extends ScreenPoint {
  readonly radius: number;
}

/**
 * A place for the loupe that is whole on the sheet and not under the finger: above it where there is room, else beside
 * it, since below is the hand. Null where the sheet is too small for any.
 */
export function loupePlace(at: ScreenPoint, view: ViewSize): LoupePlace | null {
  for (const radius of RADII) {
    if (view.width < 2 * radius || view.height < 2 * radius) continue;
    const inside = (place: number, length: number) => Math.min(length - radius, Math.max(radius, place));
    const away = radius + CLEAR;
    const top = inside(at.top - away, view.height);
    const beside = Math.sqrt(Math.max(0, away ** 2 - (at.top - top) ** 2));
    // The left side first: most people work with the right hand.
    for (const way of [-beside, beside]) {
      const left = inside(at.left + way, view.width);
      if (Math.hypot(left - at.left, top - at.top) > away - 1) return { left, top, radius };
    }
  }
  return null;
}

/**
 * Shows what lies under a finger, larger and beside it, so that the finger does not cover it. Drawn last, from what
 * is on the canvas already.
 */
export function drawLoupe(
  context: CanvasRenderingContext2D,
  at: ScreenPoint,
  view: ViewSize,
  ratio: number,
): void {
  const place = loupePlace(at, view);
  if (!place) return;
  const { left, top, radius } = place;
  const seen = radius / GROWN;
  context.save();
  context.beginPath();
  context.arc(left, top, radius, 0, 2 * Math.PI);
  context.clip();
  context.fillStyle = '#ffffff';
  context.fillRect(left - radius, top - radius, 2 * radius, 2 * radius);
  context.drawImage(
    context.canvas,
    (at.left - seen) * ratio,
    (at.top - seen) * ratio,
    2 * seen * ratio,
    2 * seen * ratio,
    left - radius,
    top - radius,
    2 * radius,
    2 * radius,
  );
  context.restore();
  context.lineWidth = 3;
  context.strokeStyle = '#1c5d5a';
  context.beginPath();
  context.arc(left, top, radius, 0, 2 * Math.PI);
  context.stroke();
  context.lineWidth = 2;
  context.beginPath();
  addCross(context, place, 7, 18);
  context.stroke();
}
