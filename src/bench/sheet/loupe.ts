import type { ScreenPoint, ViewSize } from './camera.ts';

const RADIUS = 64;
const AWAY = 110;
const GROWN = 2.2;

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
  const left = Math.min(view.width - RADIUS, Math.max(RADIUS, at.left));
  const above = at.top - AWAY;
  const top = above > RADIUS ? above : Math.min(view.height - RADIUS, at.top + AWAY);
  const seen = RADIUS / GROWN;
  context.save();
  context.beginPath();
  context.arc(left, top, RADIUS, 0, 2 * Math.PI);
  context.clip();
  context.fillStyle = '#ffffff';
  context.fillRect(left - RADIUS, top - RADIUS, 2 * RADIUS, 2 * RADIUS);
  context.drawImage(
    context.canvas,
    (at.left - seen) * ratio,
    (at.top - seen) * ratio,
    2 * seen * ratio,
    2 * seen * ratio,
    left - RADIUS,
    top - RADIUS,
    2 * RADIUS,
    2 * RADIUS,
  );
  context.restore();
  context.lineWidth = 3;
  context.strokeStyle = '#1c5d5a';
  context.beginPath();
  context.arc(left, top, RADIUS, 0, 2 * Math.PI);
  context.moveTo(left - 12, top);
  context.lineTo(left + 12, top);
  context.moveTo(left, top - 12);
  context.lineTo(left, top + 12);
  context.stroke();
}
