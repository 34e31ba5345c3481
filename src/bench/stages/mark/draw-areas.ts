import { boxOf } from '#base/geometry/box.ts';
import { allPlaces, type PlaceOf } from '#paper/ink/places.ts';
import type { Anchor, Pattern, Stitch } from '#pattern/pattern.ts';
import type { Overlay } from '../../sheet/tool.ts';
import { HATCH_SIDE, hatches } from './hatch.ts';

/** Lays over every tinted area the lines by which its stitch is told, so that it does not take its colour to tell it. */
export function hatchAreas(overlay: Overlay, { areas }: Pattern, placeOf: PlaceOf): void {
  const { context, view } = overlay;
  for (const { outline, stitch = 'other' } of areas) {
    const corners = cornersOf(overlay, outline, placeOf);
    if (!corners) continue;
    const { left, top, right, bottom } = boxOf(corners);
    const isSeen = right > 0 && bottom > 0 && left < view.width && top < view.height;
    if (!isSeen || Math.max(right - left, bottom - top) < HATCH_SIDE) continue;
    const pattern = hatchOf(context, stitch);
    if (!pattern) return;
    context.fillStyle = pattern;
    trace(context, corners);
    context.fill('evenodd');
  }
}

/** Draws a thick line round an area. */
export function outlineArea(
  overlay: Overlay,
  outline: readonly Anchor[],
  placeOf: PlaceOf,
  colour: string,
): void {
  const corners = cornersOf(overlay, outline, placeOf);
  if (!corners) return;
  overlay.context.strokeStyle = colour;
  overlay.context.lineWidth = 4;
  trace(overlay.context, corners);
  overlay.context.stroke();
}

function cornersOf({ place }: Overlay, outline: readonly Anchor[], placeOf: PlaceOf) {
  return allPlaces(outline, placeOf)?.map((point) => {
    const { left, top } = place(point);
    return { x: left, y: top };
  });
}

function trace(context: CanvasRenderingContext2D, corners: readonly { x: number; y: number }[]): void {
  context.beginPath();
  corners.forEach(({ x, y }, at) => {
    if (at === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  });
  context.closePath();
}

const made = new Map<Stitch, CanvasPattern | null>();

function hatchOf(context: CanvasRenderingContext2D, stitch: Stitch): CanvasPattern | null {
  const known = made.get(stitch);
  if (known) return known;
  const tile = new OffscreenCanvas(HATCH_SIDE, HATCH_SIDE);
  const brush = tile.getContext('2d');
  if (!brush) return null;
  brush.strokeStyle = '#20242c';
  brush.globalAlpha = 0.3;
  for (const [x, y, toX, toY] of hatches[stitch]) {
    brush.beginPath();
    brush.moveTo(x * HATCH_SIDE, y * HATCH_SIDE);
    brush.lineTo(toX * HATCH_SIDE, toY * HATCH_SIDE);
    brush.stroke();
  }
  const pattern = context.createPattern(tile, 'repeat');
  made.set(stitch, pattern);
  return pattern;
}
