import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Pin } from '#pattern/pattern.ts';
import { toPattern } from '../../sheet/camera.ts';
import { USUAL_DOT } from '../../sheet/scene.ts';
import type { Overlay } from '../../sheet/tool.ts';
import type { StraightenShown } from './straighten-tool.ts';
import type { Taking } from './taking.ts';

/** Moves are drawn once the farthest is as long as this on the screen, px: before that they are but specks. */
const LEAST_LENGTH = 5;
/** More lines than this would be a grey cloud, and slow. */
const MOST_MOVES = 3_000;

/** What the view shows, in the pattern's unit, with some air. */
export function seen({ camera, view }: Overlay): Box {
  const air = 20;
  const { x: left, y: top } = toPattern(camera, view, { left: -air, top: -air });
  const { x: right, y: bottom } = toPattern(camera, view, {
    left: view.width + air,
    top: view.height + air,
  });
  return { left, top, right, bottom };
}

export const isIn = ({ x, y }: Point, { left, top, right, bottom }: Box): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** The pins part of the way. Nothing is made a pin, as this runs at every frame for up to 20,000 of them. */
export function drawPins(overlay: Overlay, { pins, taking, share }: StraightenShown): void {
  const { context, camera, view } = overlay;
  const { scale, centre } = camera;
  const box = seen(overlay);
  context.fillStyle = '#000000';
  context.beginPath();
  for (let pin = 0; pin < pins.length; pin++) {
    const from = pins[pin]!;
    const to = taking.places[pin]!;
    const x = from.x + share * (to.x - from.x);
    const y = from.y + share * (to.y - from.y);
    if (x < box.left || x > box.right || y < box.top || y > box.bottom) continue;
    const radius = Math.max(0.9, ((from.diameter ?? USUAL_DOT) / 2) * scale);
    const left = (x - centre.x) * scale + view.width / 2;
    const top = (y - centre.y) * scale + view.height / 2;
    // Dots a few pixels wide are squares: nobody sees the difference, and they are drawn ten times as fast.
    if (radius < 1.5) context.fillRect(left - radius, top - radius, 2 * radius, 2 * radius);
    else {
      context.moveTo(left + radius, top);
      context.arc(left, top, radius, 0, 2 * Math.PI);
    }
  }
  context.fill();
}

/** The moves as short lines from where a pin stood, ringed, to where it would stand. */
export function drawMoves(overlay: Overlay, pins: readonly Pin[], taking: Taking, longer: number): void {
  const { context, camera, place } = overlay;
  if (!taking.isSameUnit || taking.farthest * camera.scale * longer < LEAST_LENGTH) return;
  const box = seen(overlay);
  const lines: [number, number, number, number][] = [];
  for (let pin = 0; pin < pins.length; pin++) {
    const from = pins[pin]!;
    const to = taking.places[pin]!;
    if ((from.x === to.x && from.y === to.y) || !isIn(from, box)) continue;
    if (lines.length === MOST_MOVES) return;
    const { left, top } = place(from);
    const long = camera.scale * longer;
    lines.push([left, top, left + (to.x - from.x) * long, top + (to.y - from.y) * long]);
  }
  const ring = Math.min(3, Math.max(1, camera.scale * 0.4));
  const thick = ring < 2 ? 1.5 : 2.5;
  for (const [width, colour] of [
    [2 * thick, '#ffffff'],
    [thick, '#c2410c'],
  ] as const) {
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.beginPath();
    for (const [left, top, toLeft, toTop] of lines) {
      context.moveTo(left, top);
      context.lineTo(toLeft, toTop);
      context.moveTo(left + ring, top);
      context.arc(left, top, ring, 0, 2 * Math.PI);
    }
    context.stroke();
  }
}
