import { type Box, heightOf, isEmptyBox, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';

/** A place on the screen, in CSS pixels from the sheet's top left corner: never to be mixed with millimetres. */
export interface ScreenPoint {
  readonly left: number;
  readonly top: number;
}

/** How the pattern is seen: its point `centre` lies in the middle of the view, `scale` CSS pixels to its unit. */
export interface Camera {
  readonly centre: Point;
  readonly scale: number;
}

export interface ViewSize {
  readonly width: number;
  readonly height: number;
}

export const toScreen = ({ centre, scale }: Camera, view: ViewSize, { x, y }: Point): ScreenPoint => ({
  left: (x - centre.x) * scale + view.width / 2,
  top: (y - centre.y) * scale + view.height / 2,
});

export const toPattern = ({ centre, scale }: Camera, view: ViewSize, { left, top }: ScreenPoint): Point => ({
  x: (left - view.width / 2) / scale + centre.x,
  y: (top - view.height / 2) / scale + centre.y,
});

/** Zooms by a factor so that the point of the pattern under `at` stays there. */
export function zoomAt(camera: Camera, view: ViewSize, at: ScreenPoint, factor: number): Camera {
  const held = toPattern(camera, view, at);
  const scale = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, camera.scale * factor));
  return {
    scale,
    centre: {
      x: held.x - (at.left - view.width / 2) / scale,
      y: held.y - (at.top - view.height / 2) / scale,
    },
  };
}

export const panBy = (camera: Camera, across: number, down: number): Camera => ({
  ...camera,
  centre: { x: camera.centre.x - across / camera.scale, y: camera.centre.y - down / camera.scale },
});

/** The camera that shows a whole box with some air round it, clear of the buttons that lie on the sheet's lower edge. */
export function cameraOn(box: Box, view: ViewSize): Camera {
  if (isEmptyBox(box)) return { centre: { x: 0, y: 0 }, scale: 4 };
  const buttons = view.height > 4 * BUTTONS ? BUTTONS : 0;
  const scale = Math.min(
    view.width / Math.max(widthOf(box) * 1.1, 5),
    (view.height - buttons) / Math.max(heightOf(box) * 1.1, 5),
    MOST_SCALE,
  );
  const middle = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
  return { centre: { x: middle.x, y: middle.y + buttons / 2 / scale }, scale };
}

/** Height of the buttons on the sheet with the gap below them, CSS pixels. */
const BUTTONS = 56;
const LEAST_SCALE = 0.01;
const MOST_SCALE = 400;

/** The box whose edges lie `reach` from a point. */
export const boxAround = ({ x, y }: Point, reach: number): Box => ({
  left: x - reach,
  top: y - reach,
  right: x + reach,
  bottom: y + reach,
});
