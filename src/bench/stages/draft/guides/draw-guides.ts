import type { Point } from '#base/geometry/point.ts';
import type { Guide } from '#craft/draft/guides/guide.ts';
import type { Overlay } from '../../../sheet/tool.ts';
import type { ChosenPoint } from './guide-tool.ts';

/** Over the white sheet in either look. */
const COLOUR = '#1c5d5a';
const PAPER = '#ffffff';

/** Draws the guides with their points; the chosen point is filled and ringed, corners and shaping points are square. */
export function drawGuides(overlay: Overlay, guides: readonly Guide[], chosen: ChosenPoint | null): void {
  const { context } = overlay;
  context.strokeStyle = COLOUR;
  for (const guide of guides) drawLine(overlay, guide);
  for (const [g, { points }] of guides.entries()) {
    for (const [p, point] of points.entries()) {
      const isChosen = chosen?.guide === g && chosen.point === p;
      drawPoint(overlay, point, isChosen, point.isSharp || !point.isOn);
    }
  }
}

function drawLine({ context, place }: Overlay, { line, points }: Guide): void {
  context.lineWidth = 1.5;
  context.setLineDash([6, 4]);
  context.beginPath();
  for (const [k, spot] of line.entries()) {
    const { left, top } = place(spot);
    if (k === 0) context.moveTo(left, top);
    else context.lineTo(left, top);
  }
  // From the ends of a drawn curve to the points that shape it.
  for (const [k, point] of points.entries()) {
    if (point.isOn) continue;
    const end = points[k - 1]?.isOn ? points[k - 1]! : points[k + 1]!;
    const [from, to] = [place(end), place(point)];
    context.moveTo(from.left, from.top);
    context.lineTo(to.left, to.top);
  }
  context.stroke();
  context.setLineDash([]);
}

function drawPoint({ context, place }: Overlay, point: Point, isChosen: boolean, isSquare: boolean): void {
  const { left, top } = place(point);
  const shape = (radius: number) => {
    context.beginPath();
    if (isSquare) context.rect(left - radius, top - radius, 2 * radius, 2 * radius);
    else context.arc(left, top, radius, 0, 2 * Math.PI);
  };
  shape(8);
  context.fillStyle = isChosen ? COLOUR : PAPER;
  context.fill();
  context.lineWidth = 2.5;
  context.strokeStyle = COLOUR;
  context.stroke();
  if (!isChosen) return;
  shape(14);
  context.stroke();
}
