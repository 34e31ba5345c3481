import { groundAt, groundOf } from './ground.ts';
import type { PixelPicture } from './warp.ts';

/**
 * Tiles darker than this share of the page's usual ground are a tint or a shadow of the drawing, not paper: they
 * are lifted no further than the page is, so that tinted areas stay tinted.
 */
const DARKEST_PAPER = 0.9;
/** So much of a channel's own ground counts as white: grain and the show-through of the back vanish in it. */
const WHITE_FROM = 0.94;
/** Ink this share of the way down to the darkest round it is printed black: thin lines are paler than they are. */
const BLACK_FROM = 0.8;
/** Colours weaker than this (largest less smallest channel, of 255, on average over the inked pixels) are none. */
const LEAST_COLOUR = 22;

/**
 * The picture on white paper: what is as light as the bare ground round it becomes white, and what is as dark as
 * most ink becomes black. Yellowed paper, film and uneven light go; tints stay. A picture without colour in its ink
 * comes back as grey.
 */
export function whitenGround(picture: PixelPicture): PixelPicture {
  const { width, height, channels, bytes } = picture;
  const white = new Uint8Array(bytes.length);
  for (let channel = 0; channel < channels; channel++) {
    const grey = new Uint8Array(width * height);
    for (let at = 0; at < grey.length; at++) grey[at] = bytes[at * channels + channel]!;
    const plane = { width, height, grey };
    const ground = groundOf(plane);
    const usual = Float32Array.from(ground.level).sort()[ground.level.length >> 1]!;
    const level = ground.level.map((tile) => Math.max(tile, DARKEST_PAPER * usual));
    for (let row = 0; row < height; row++) {
      for (let start = 0; start < width; start += STRETCH) {
        const stop = Math.min(start + STRETCH, width);
        const bare = groundAt(ground, level, plane, start + STRETCH / 2, row);
        const depth = groundAt(ground, ground.depth, plane, start + STRETCH / 2, row);
        const black = bare - BLACK_FROM * depth;
        const lift = 255 / Math.max(1, WHITE_FROM * bare - black);
        for (let column = start; column < stop; column++) {
          const at = row * width + column;
          white[at * channels + channel] = Math.max(0, Math.min(255, (grey[at]! - black) * lift));
        }
      }
    }
  }
  const result: PixelPicture = { width, height, channels, bytes: white };
  return channels === 3 && !hasColour(white) ? toGrey(result) : result;
}

/** The ground changes slowly: reading it once for so many pixels of a row is as good as for each. */
const STRETCH = 16;

function hasColour(bytes: Uint8Array): boolean {
  let inked = 0;
  let colour = 0;
  for (let at = 0; at < bytes.length; at += 3) {
    const [red, green, blue] = [bytes[at]!, bytes[at + 1]!, bytes[at + 2]!];
    const lightest = Math.max(red, green, blue);
    const darkest = Math.min(red, green, blue);
    if (darkest > 230) continue;
    inked++;
    colour += lightest - darkest;
  }
  return inked > 0 && colour / inked >= LEAST_COLOUR;
}

/** Luma of ITU-R BT.601, as greyscale conversions of photographs use it. */
function toGrey({ width, height, bytes }: PixelPicture): PixelPicture {
  const grey = new Uint8Array(width * height);
  for (let at = 0; at < grey.length; at++) {
    grey[at] = 0.299 * bytes[at * 3]! + 0.587 * bytes[at * 3 + 1]! + 0.114 * bytes[at * 3 + 2]!;
  }
  return { width, height, channels: 1, bytes: grey };
}
