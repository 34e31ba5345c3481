import { type Camera, stretchAt, toPixel } from '#base/fit/camera.ts';
import { type Box, boxOf, growBox } from '#base/geometry/box.ts';
import { between, type PixelPoint, type Point } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { normal, type Random } from '#base/random.ts';
import { Layer } from '../scan/layer.ts';
import { smoothField } from '../scan/noise.ts';
import { type CardOptions, type CardSettings, settle } from './options.ts';
import { type PrickedCard, type PrickedHole, prick } from './prick.ts';
import { sceneOf } from './scene.ts';
import { viewOf } from './view.ts';

/** A photo of a pricked card, and what is true of it. */
export interface CardPhoto {
  readonly picture: GreyPicture;
  readonly card: PrickedCard;
  readonly camera: Camera;
  /** The card's own outline, mm on the pattern. */
  readonly outline: Box;
}

/** Pricks a card from a pattern and takes its photo; all chance comes from `random`. */
export function photographCard(pins: readonly Point[], options: CardOptions, random: Random): CardPhoto {
  const settings = settle(options);
  const outline = growBox(boxOf(pins), settings.border);
  const card = prick(pins, settings, random);
  const camera = viewOf(outline, settings);
  const holes = new Layer(settings.width, settings.height);
  const all = [...card.holes.filter((hole) => hole !== null), ...card.extra];
  for (const hole of all) draw(holes, hole, camera, settings, random);
  litter(holes, outline, camera, settings, random);
  const solid = solidOf(outline, camera, settings);
  for (const layer of [holes, solid]) layer.blur(settings.blur);
  return { picture: expose(holes, solid, settings, random), card, camera, outline };
}

/** A ragged ellipse, narrowed by the card's thickness the way it is tilted. */
function draw(layer: Layer, hole: PrickedHole, camera: Camera, settings: CardSettings, random: Random): void {
  const at = toPixel(camera, hole);
  const [a, b, c, d] = stretchAt(camera, hole);
  const det = a * d - b * c;
  const size = Math.sqrt(Math.abs(det));
  const [cos, sin] = [Math.cos(hole.angle), Math.sin(hole.angle)];
  const [long, short] = [
    (hole.diameter / 2) * Math.sqrt(hole.aspect),
    hole.diameter / 2 / Math.sqrt(hole.aspect),
  ];
  const burr = [2, 3, 4, 5].map((k) => ({
    k,
    size: (0.03 / Math.sqrt(k)) * normal(random),
    phase: 2 * Math.PI * random(),
  }));
  const slide = settings.thickness * Math.tan((settings.tilt * Math.PI) / 180) * size;
  const towards = (settings.tiltTowards * Math.PI) / 180;
  const [slideX, slideY] = [(slide / 2) * Math.cos(towards), (slide / 2) * Math.sin(towards)];
  const cover = (dx: number, dy: number): number => {
    const x = (d * dx - b * dy) / det;
    const y = (-c * dx + a * dy) / det;
    const [u, v] = [(x * cos + y * sin) / long, (-x * sin + y * cos) / short];
    const angle = Math.atan2(v, u);
    const edge = burr.reduce((sum, { k, size: s, phase }) => sum + s * Math.cos(k * angle + phase), 1);
    const away = (edge - Math.hypot(u, v)) * Math.sqrt(long * short) * size;
    return Math.max(0, Math.min(1, 0.5 + away));
  };
  layer.shade(at.column, at.row, long * size * 1.3 + slide + 2, (x, y) => {
    const [dx, dy] = [x - at.column, y - at.row];
    return Math.min(cover(dx - slideX, dy - slideY), cover(dx + slideX, dy + slideY));
  });
}

/** Specks of light much smaller than a hole. */
function litter(layer: Layer, outline: Box, camera: Camera, settings: CardSettings, random: Random): void {
  const somewhere = (): PixelPoint =>
    toPixel(camera, {
      x: outline.left + (outline.right - outline.left) * random(),
      y: outline.top + (outline.bottom - outline.top) * random(),
    });
  for (let k = 0; k < settings.specks; k++) {
    layer.disc(somewhere(), 0.5 + 0.6 * random(), 0.3 + 0.5 * random(), () => 0);
  }
  for (let k = 0; k < settings.scratches; k++) {
    const from = somewhere();
    const to = { column: from.column + 80 * normal(random), row: from.row + 80 * normal(random) };
    layer.stroke(from, to, 0.7, 0.06, () => 0);
  }
}

/** Where the card is: its outline is cut in short pieces, for the lens bends it. */
function solidOf(outline: Box, camera: Camera, { width, height }: CardSettings): Layer {
  const layer = new Layer(width, height);
  const { left, top, right, bottom } = outline;
  const corners = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
  const pieces = corners.flatMap((from, k) =>
    Array.from({ length: 20 }, (_, step) => toPixel(camera, between(from, corners[(k + 1) % 4]!, step / 20))),
  );
  layer.fill(pieces, 1);
  return layer;
}

function expose(holes: Layer, solid: Layer, settings: CardSettings, random: Random): GreyPicture {
  const { width, height } = settings;
  const scene = sceneOf(solid, settings, random);
  const texture = smoothField(random);
  const grain = smoothField(random);
  const grey = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const k = row * width + column;
      const own = scene.card + 7 * texture(column / 90, row / 90) + 4 * grain(column / 5, row / 5);
      const through = holes.cover[k]! * solid.cover[k]!;
      const behind = scene.behind(column, row);
      const inside = own + through * (scene.through(column, row) - own);
      const value =
        solid.cover[k]! * inside +
        (1 - solid.cover[k]!) * behind +
        settings.noise * 2 * (random() + random() + random() - 1.5);
      grey[k] = Math.max(0, Math.min(255, Math.round(value)));
    }
  }
  return { width, height, grey };
}
