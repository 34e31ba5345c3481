import type { ScreenPoint } from './camera.ts';

/** Adds the four arms of a cross to the path. Its middle stays free, since that is what one looks at. */
export function addCross(context: CanvasPath, { left, top }: ScreenPoint, from: number, to: number): void {
  for (const [x, y] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.moveTo(left + from * x, top + from * y);
    context.lineTo(left + to * x, top + to * y);
  }
}
