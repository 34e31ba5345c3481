import type { Camera } from '#base/fit/camera.ts';
import { composeHomographies, type Homography } from '#base/fit/homography.ts';
import { type Box, heightOf, widthOf } from '#base/geometry/box.ts';
import type { CardSettings } from './options.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** A camera over a card that is turned, tilted, turned over and off the middle as the settings say. */
export function viewOf(card: Box, settings: CardSettings): Camera & { readonly pixelsPerMm: number } {
  const { width, height } = settings;
  const diagonal = Math.hypot(widthOf(card), heightOf(card));
  const pixelsPerMm = settings.pixelsPerMm ?? (0.92 * Math.min(width, height)) / diagonal;
  const focal = 1.1 * Math.max(width, height);
  const [turn, towards, tilt] = [settings.turn, settings.tiltTowards, settings.tilt].map(radians) as [
    number,
    number,
    number,
  ];
  const centre = { column: (width - 1) / 2, row: (height - 1) / 2 };
  const steps: Homography[] = [
    [1, 0, -(card.left + card.right) / 2, 0, 1, -(card.top + card.bottom) / 2, 0, 0, 1],
    [settings.mirrored ? -pixelsPerMm : pixelsPerMm, 0, 0, 0, pixelsPerMm, 0, 0, 0, 1],
    turned(turn - towards),
    [Math.cos(tilt), 0, 0, 0, 1, 0, Math.sin(tilt) / focal, 0, 1],
    turned(towards),
    [1, 0, centre.column + settings.shift[0] * width, 0, 1, centre.row + settings.shift[1] * height, 0, 0, 1],
  ];
  const homography = steps.reduce((inner, outer) => composeHomographies(outer, inner));
  return { homography, k1: settings.k1, centre, radius: Math.hypot(width, height) / 2, pixelsPerMm };
}

const turned = (angle: number): Homography => [
  Math.cos(angle),
  -Math.sin(angle),
  0,
  Math.sin(angle),
  Math.cos(angle),
  0,
  0,
  0,
  1,
];
