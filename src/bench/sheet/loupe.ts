import type { ScreenPoint, ViewSize } from './camera.ts';

const RADIUS = 64;
/** From the finger's middle to the loupe's edge. */
const CLEAR = 46;
const GROWN = 2.2;

/** Where a loupe stands, and its radius, CSS pixels. */
export interface LoupePlace extends ScreenPoint {
  readonly radius: number;
}

/**
 * A place for the loupe that is whole on the sheet and not under the finger: above it where there is room, else beside
 * it. Never below, where the hand is, unless the sheet is too small for anything else.
 */
export function loupePlace(at: ScreenPoint, view: ViewSize): LoupePlace {
  const radius = Math.min(RADIUS, view.width / 4, view.height / 4);
  const away = radius + CLEAR;
  const inside = (place: number, length: number) => Math.min(length - radius, Math.max(radius, place));
  const level = inside(at.top - away, view.height);
  const beside = Math.sqrt(Math.max(0, away ** 2 - (at.top - level) ** 2));
  // The left side first: most people work with the right hand.
  const ways = beside < 1 ? [0] : [-beside, beside];
  const places = ways.map((way) => ({ left: inside(at.left + way, view.width), top: level, radius }));
  const below = { left: inside(at.left, view.width), top: inside(at.top + away, view.height), radius };
  const clearance = (place: ScreenPoint) => Math.hypot(place.left - at.left, place.top - at.top);
  const free = places.find((place) => clearance(place) > away - 1);
  return free ?? [...places, below].sort((one, other) => clearance(other) - clearance(one))[0]!;
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
  const { left, top, radius } = loupePlace(at, view);
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
  // The cross leaves the very middle free, which is what one looks at.
  context.lineWidth = 2;
  context.beginPath();
  for (const [x, y] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.moveTo(left + 7 * x, top + 7 * y);
    context.lineTo(left + 18 * x, top + 18 * y);
  }
  context.stroke();
}
