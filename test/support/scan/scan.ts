import { type Affine, applyAffine, compose, rotation, scaling, translation } from '#base/geometry/affine.ts';
import { type Box, boxOf, growBox } from '#base/geometry/box.ts';
import type { PixelPoint, Point } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { normal, type Random } from '#base/random.ts';
import type { KnownPattern } from '../patterns/index.ts';
import { Pen } from './ink.ts';
import { Layer } from './layer.ts';
import { write } from './lettering.ts';
import { type ScanOptions, type ScanSettings, settle } from './options.ts';
import { expose } from './sensor.ts';

export interface TrueHole extends PixelPoint {
  /** Diameter of the dot or hole on this picture, mm. */
  readonly diameter: number;
  /** Drowned in a thick line or a knot of lines: nobody can tell it from the ink round it. */
  readonly hidden: boolean;
}

export interface ScanTruth {
  /** Where each pin of the pattern lies in the picture, by its index. */
  readonly holes: readonly TrueHole[];
  /** Pairs of pins that a drawn working line joins, by index. */
  readonly lines: readonly (readonly [number, number])[];
  /** Maps the pattern's mm to pixels (x = column, y = row). */
  readonly toPixels: Affine;
  readonly dpi: number;
}

export interface Scan {
  /** Bytes in order R, G, B, row after row. */
  readonly rgb: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly truth: ScanTruth;
}

/** A picture of the pattern as it comes off a flatbed scanner, and what is true of it. */
export function renderScan(known: KnownPattern, options: ScanOptions, random: Random): Scan {
  const settings = settle(options);
  const { pattern } = known;
  const box = growBox(boxOf(pattern.pins), settings.margin);
  const page = settings.page ?? { width: box.right - box.left, height: box.bottom - box.top };
  const perMm = settings.dpi / 25.4;
  const width = Math.round(page.width * perMm);
  const height = Math.round(page.height * perMm);
  const toPixels = layOut(box, width, height, settings);
  const pen = new Pen(width, height, toPixels, settings, random);

  pen.draw(pattern);
  const holes = pattern.pins.map((pin): TrueHole => {
    const diameter = settings.dot * (1 + 0.05 * normal(random));
    const at = pen.to(pin);
    const radius = pen.pixels(diameter) / 2;
    const hidden = settings.style !== 'card' && pen.ink.ringCover(at, radius, 1.5 * radius) > 0.72;
    return { ...at, diameter, hidden };
  });
  const pricked = settings.style === 'card' ? prick(holes, pen, random) : undefined;
  if (!pricked) {
    for (const hole of holes) {
      const radius = pen.pixels(hole.diameter) / 2 + settings.bleed;
      pen.ink.disc(hole, radius, 0.94 + 0.06 * random(), pen.rough);
    }
  }
  letter(known, pen, box, settings, random);
  speckle(pen, settings, random);
  for (const layer of [pen.ink, ...(pricked ? [pricked.dark, pricked.rim] : [])]) {
    layer.blur((settings.blur * settings.dpi) / 300);
  }
  const rgb = expose(
    { ink: pen.ink, tints: pen.tints, ...(pricked ? { holes: pricked } : {}) },
    settings,
    random,
  );
  return { rgb, width, height, truth: { holes, lines: linesOf(known), toPixels, dpi: settings.dpi } };
}

/** The scan as grey, by the luma weights of Recommendation ITU-R BT.601. */
export function greyOf({ rgb, width, height }: Pick<Scan, 'rgb' | 'width' | 'height'>): GreyPicture {
  const grey = new Uint8Array(width * height);
  for (let k = 0; k < grey.length; k++) {
    grey[k] = Math.round(0.299 * rgb[3 * k]! + 0.587 * rgb[3 * k + 1]! + 0.114 * rgb[3 * k + 2]!);
  }
  return { width, height, grey };
}

/** The pattern's middle on the page's middle, turned by the skew and scaled as the copier did. */
function layOut(box: Box, width: number, height: number, settings: ScanSettings): Affine {
  const perMm = settings.dpi / 25.4;
  const centre = translation(-(box.left + box.right) / 2, -(box.top + box.bottom) / 2);
  const size = scaling(perMm * settings.scaleX, perMm * settings.scaleY);
  const turned = compose(rotation((settings.skew * Math.PI) / 180), compose(size, centre));
  return compose(translation((width - 1) / 2, (height - 1) / 2), turned);
}

function prick(holes: readonly TrueHole[], pen: Pen, random: Random): { dark: Layer; rim: Layer } {
  const dark = new Layer(pen.ink.width, pen.ink.height);
  const rim = new Layer(pen.ink.width, pen.ink.height);
  const light = 2 * Math.PI * random();
  for (const hole of holes) {
    const radius = pen.pixels(hole.diameter) / 2;
    dark.disc(hole, radius, 0.9 + 0.1 * random(), pen.rough);
    const rise = 0.4 * radius;
    const lit = { column: hole.column + rise * Math.cos(light), row: hole.row + rise * Math.sin(light) };
    rim.disc(lit, 1.12 * radius, 0.4 + 0.6 * random(), pen.rough);
  }
  return { dark, rim };
}

function letter(known: KnownPattern, pen: Pen, box: Box, settings: ScanSettings, random: Random): void {
  const angle = (settings.skew * Math.PI) / 180;
  const say = (text: string, at: Point, height: number, italic = false): void =>
    write(pen.ink, text, pen.to(at), pen.pixels(height), angle, { italic });
  const bottom = box.bottom - settings.margin;
  if (settings.title)
    say(settings.title, { x: box.left + settings.margin, y: box.top + 0.6 * settings.margin }, 5);
  settings.notes.forEach((note, k) => {
    say(note, { x: box.left + settings.margin, y: bottom + 5 + 3.4 * k }, 2.7);
  });
  for (let k = 0; k < settings.numbers; k++) {
    const pin = known.pattern.pins[Math.floor(random() * known.pattern.pins.length)]!;
    const at = { x: pin.x + 0.4 + 0.4 * random(), y: pin.y + 0.6 + random() };
    say(String(1 + Math.floor(24 * random())), at, 2.4, true);
  }
  if (settings.border) {
    const { left, top, right, bottom: below } = growBox(box, -0.3 * settings.margin);
    const corners = [
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: below },
      { x: left, y: below },
    ];
    pen.path(corners, true, 0.35);
  }
}

function speckle(pen: Pen, settings: ScanSettings, random: Random): void {
  const { width, height } = pen.ink;
  const count = Math.round((settings.speckle * width * height) / pen.pixels(10) ** 2);
  for (let k = 0; k < count; k++) {
    const at = { column: random() * width, row: random() * height };
    // Most specks are far smaller than a dot; a few come near it in size.
    const radius = pen.pixels(0.5 * settings.dot) * (0.12 + 0.5 * random() ** 3);
    pen.ink.disc(at, radius, 0.4 + 0.6 * random(), pen.rough);
  }
}

function linesOf({ pattern }: KnownPattern): [number, number][] {
  const index = new Map(pattern.pins.map((pin, k) => [pin.id, k]));
  return pattern.marks.flatMap((mark): [number, number][] => {
    if (mark.kind !== 'line' || !('pin' in mark.from) || !('pin' in mark.to)) return [];
    return [[index.get(mark.from.pin)!, index.get(mark.to.pin)!]];
  });
}

export const pixelOf = (truth: ScanTruth, point: Point): PixelPoint => {
  const { x, y } = applyAffine(truth.toPixels, point);
  return { column: x, row: y };
};
