import type { PixelPoint } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import { MM_PER_INCH } from '#base/units/length.ts';
import type { Scale } from '#pattern/pattern.ts';
import type { FileScale } from '../picture/picture.ts';
import type { ScaleTrouble } from '../trouble.ts';

/**
 * The scale as a person gives it: dots an inch, or the true distance (mm) of two places in the picture; or as the pattern
 * on it knows it already.
 */
export type ScaleGiven =
  | { readonly kind: 'dpi'; readonly dpi: number }
  | { readonly kind: 'known'; readonly scale: KnownScale }
  | { readonly kind: 'span'; readonly from: PixelPoint; readonly to: PixelPoint; readonly length: number };

/** A scale that says how large a dot of the picture is. */
export type KnownScale = Extract<Scale, { readonly dpi: number }>;

/** A scale outside this range of dots an inch is a slip of the hand: a phone far off, a microscope near by. */
const COARSEST = 20;
const FINEST = 20_000;

/** Two places nearer than this many pixels tell no scale: half a pixel's slip at each end is 1 % of it. */
const SHORTEST_SPAN = 100;

/**
 * What is known of a picture's scale: what a person gives counts before what the file states, and what nobody
 * measured counts for nothing.
 */
export function chooseScale(file: FileScale, given: ScaleGiven | null): Result<Scale, ScaleTrouble> {
  if (given?.kind === 'known') return sensible(given.scale);
  if (given?.kind === 'dpi') return sensible({ from: 'given', dpi: given.dpi });
  if (given?.kind === 'span') {
    const pixels = Math.hypot(given.to.column - given.from.column, given.to.row - given.from.row);
    if (pixels < SHORTEST_SPAN) return failed({ kind: 'span-too-short', pixels });
    return sensible({ from: 'span', dpi: (pixels * MM_PER_INCH) / given.length, length: given.length });
  }
  switch (file.kind) {
    case 'stated':
      return sensible({ from: 'file', dpi: file.dpi });
    case 'unequal':
      return failed({ kind: 'unequal-dots', across: file.across, down: file.down });
    case 'doubtful':
    case 'none':
      return done({ from: 'none' });
  }
}

const sensible = (scale: KnownScale): Result<KnownScale, ScaleTrouble> =>
  scale.dpi >= COARSEST && scale.dpi <= FINEST
    ? done(scale)
    : failed({ kind: 'absurd-scale', dpi: scale.dpi });
