import type { Point } from '#base/geometry/point.ts';
import type { Overlay } from '../../sheet/tool.ts';
import { isIn, seen } from './draw-moves.ts';
import { between, type MissingPlace } from './taking.ts';

const ACCENT = '#1c5d5a';
const MISSING = '#23642f';
const STRAY = '#a3271f';

/** The pins of what is chosen: squares, joined by a line where they stand in a row. */
export function drawChosen(overlay: Overlay, places: readonly Point[], joined: boolean): void {
  const { context, place, camera } = overlay;
  const box = seen(overlay);
  // Far away the squares shrink, so that those of neighbours stay apart.
  const reach = Math.min(7, Math.max(2, camera.scale * 0.9));
  context.strokeStyle = ACCENT;
  context.lineWidth = reach < 4 ? 1.2 : 2;
  context.beginPath();
  if (joined) {
    places.forEach((point, index) => {
      const { left, top } = place(point);
      if (index === 0) context.moveTo(left, top);
      else context.lineTo(left, top);
    });
  }
  for (const point of places) {
    if (!isIn(point, box)) continue;
    const { left, top } = place(point);
    context.rect(left - reach, top - reach, 2 * reach, 2 * reach);
  }
  context.stroke();
}

/** A dashed ring where a pin may lack; whole, with a cross in it, where it is to be put in. */
export function drawMissing(
  overlay: Overlay,
  { from, to, taken }: MissingPlace,
  share: number,
  asked: boolean,
): void {
  const { context, place } = overlay;
  const { left, top } = place(between(from, to, share));
  context.strokeStyle = MISSING;
  context.lineWidth = asked ? 4 : 2.5;
  context.setLineDash(taken ? [] : [4, 3]);
  context.beginPath();
  context.arc(left, top, asked ? 14 : 9, 0, 2 * Math.PI);
  context.stroke();
  context.setLineDash([]);
  if (!taken) return;
  context.beginPath();
  context.moveTo(left - 5, top);
  context.lineTo(left + 5, top);
  context.moveTo(left, top - 5);
  context.lineTo(left, top + 5);
  context.stroke();
}

/** A dashed diamond round a pin that may be stray; whole and crossed out where it is to be taken out. */
export function drawStray(overlay: Overlay, at: Point, taken: boolean, asked: boolean): void {
  const { context, place } = overlay;
  const { left, top } = place(at);
  const reach = asked ? 16 : 11;
  context.strokeStyle = STRAY;
  context.lineWidth = asked ? 4 : 2.5;
  context.setLineDash(taken ? [] : [4, 3]);
  context.beginPath();
  context.moveTo(left, top - reach);
  context.lineTo(left + reach, top);
  context.lineTo(left, top + reach);
  context.lineTo(left - reach, top);
  context.closePath();
  context.stroke();
  context.setLineDash([]);
  if (!taken) return;
  context.beginPath();
  context.moveTo(left - reach, top - reach);
  context.lineTo(left + reach, top + reach);
  context.moveTo(left + reach, top - reach);
  context.lineTo(left - reach, top + reach);
  context.stroke();
}

/** The pins touched for a known distance, with a line from one to the other. */
export function drawPicked({ context, place }: Overlay, places: readonly Point[]): void {
  context.strokeStyle = ACCENT;
  context.lineWidth = 3;
  context.beginPath();
  for (const point of places) {
    const { left, top } = place(point);
    context.moveTo(left + 13, top);
    context.arc(left, top, 13, 0, 2 * Math.PI);
  }
  if (places.length === 2) {
    const [one, other] = [place(places[0]!), place(places[1]!)];
    context.moveTo(one.left, one.top);
    context.lineTo(other.left, other.top);
  }
  context.stroke();
}
