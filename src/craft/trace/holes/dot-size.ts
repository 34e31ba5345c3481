import { discWidths } from '#base/picture/disc-widths.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { groundOf, hasInk } from '#base/picture/ground.ts';
import { shrink } from '#base/picture/shrink.ts';

/** Dots of lace patterns lie well within these diameters, mm (common practice, no source). */
const USUAL = { least: 0.25, middle: 0.58, most: 1.4 };
/** Widths that can be measured at one scale of the picture, pixels. */
const SHARP = { least: 2.5, most: 16 };
/** Fewer discs than this are no page of dots. */
const LEAST_DISCS = 6;

export interface DotSize {
  /** Diameter of the page's dots, pixels. */
  readonly diameter: number;
  /** How many discs of about that size were seen. */
  readonly discs: number;
}

/**
 * The diameter that most discs of a picture share, or null where no size stands out. With `dpi` only sizes usual
 * for lace are looked for; without, all sizes that the picture can hold.
 */
export function dotSize(picture: GreyPicture, dpi?: number): DotSize | null {
  const widths = dpi === undefined ? atAllScales(picture) : atScaleOf(picture, dpi);
  return mostShared(widths, dpi);
}

function atScaleOf(picture: GreyPicture, dpi: number): number[] {
  const factor = Math.max(1, Math.round((USUAL.middle * dpi) / 25.4 / 7));
  const least = (USUAL.least * dpi) / 25.4;
  const most = (USUAL.most * dpi) / 25.4;
  return widthsAt(picture, factor).filter((width) => width >= least && width <= most);
}

/** Each size is measured at the one scale where it spans few pixels, so that no disc counts twice. */
function atAllScales(picture: GreyPicture): number[] {
  const widths: number[] = [];
  for (let factor = 1; Math.min(picture.width, picture.height) >= 24 * factor; factor *= 2) {
    const least = (factor === 1 ? SHARP.least : SHARP.most / 2) * factor;
    for (const width of widthsAt(picture, factor)) {
      if (width >= least && width < SHARP.most * factor) widths.push(width);
    }
  }
  return widths;
}

function widthsAt(picture: GreyPicture, factor: number): number[] {
  const small = shrink(picture, factor);
  const ground = groundOf(small);
  if (!hasInk(ground)) return [];
  return discWidths(small, ground, SHARP.most + 4).map((width) => width * factor);
}

/** Bins a tenth apart are smoothed over three; specks are many but small, so larger discs weigh a little more. */
function mostShared(widths: readonly number[], dpi: number | undefined): DotSize | null {
  const bins = new Map<number, number>();
  for (const width of widths) {
    const bin = Math.round(Math.log(width) * 12);
    bins.set(bin, (bins.get(bin) ?? 0) + 1);
  }
  let best = 0;
  let peak = 0;
  for (const bin of bins.keys()) {
    const width = Math.exp(bin / 12);
    const share = (bins.get(bin - 1) ?? 0) + (bins.get(bin) ?? 0) + (bins.get(bin + 1) ?? 0);
    const off = dpi === undefined ? 0 : Math.log((width / dpi) * (25.4 / USUAL.middle)) / 0.6;
    const weight = share * Math.sqrt(width) * Math.exp(-off * off);
    if (weight > best) {
      best = weight;
      peak = width;
    }
  }
  const near = widths.filter((width) => width > peak / 1.25 && width < peak * 1.25).sort((a, b) => a - b);
  if (near.length < LEAST_DISCS) return null;
  return { diameter: near[near.length >> 1]!, discs: near.length };
}
