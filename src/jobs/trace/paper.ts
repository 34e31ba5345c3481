import { determinant, scaling } from '#base/geometry/affine.ts';
import { MM_PER_INCH, mmPerPixel } from '#base/units/length.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import type { PaperPicture, Pattern, Scale } from '#pattern/pattern.ts';
import { emptyPattern } from '#pattern/pins.ts';
import { scalePattern } from '#pattern/scale.ts';
import type { PictureIn } from '../picture/picture.ts';
import type { KnownScale } from './scale.ts';

/** A pattern without pins on a picture of its paper. */
export function patternOnPaper({ width, height, file }: PictureIn, scale: Scale): Pattern {
  const size = dotSize(scale);
  return {
    ...emptyPattern,
    unit: 'dpi' in scale ? 'mm' : 'px',
    sheet: { width: width * size, height: height * size },
    scale,
    paper: {
      entry: file.name,
      sha256: sha256Hex(file.bytes),
      width,
      height,
      toPattern: scaling(size),
    },
  };
}

/** Size of a dot of the picture in the pattern's unit. */
export const dotSize = (scale: Scale): number => ('dpi' in scale ? mmPerPixel(scale.dpi) : 1);

/**
 * The same pattern with its paper at another scale: all that was found on the picture grows with it, the pins' own sizes
 * too. What a person chose, the pins and holes to work with, stays. A pattern in pixels becomes one in millimetres.
 * Throws where the pattern has no paper.
 */
export function withScale(pattern: Pattern, scale: KnownScale): Pattern {
  if (!pattern.paper) throw new RangeError('withScale: the pattern has no paper');
  const grown = scalePattern(pattern, dotSize(scale) / sizeOnSheet(pattern.paper), { thickness: true });
  const { pin, hole } = pattern.sizes;
  const chosen = { ...(pin !== undefined && { pin }), ...(hole !== undefined && { hole }) };
  return { ...grown, unit: 'mm', scale, sizes: { ...grown.sizes, ...chosen } };
}

/** The scale that a pattern knows for its paper, however it came by it; null where nobody knows any. */
export function scaleOfPaper({ unit, scale, paper }: Pattern): KnownScale | null {
  if ('dpi' in scale) return scale;
  return unit === 'mm' && paper ? { from: 'given', dpi: MM_PER_INCH / sizeOnSheet(paper) } : null;
}

const sizeOnSheet = ({ toPattern }: PaperPicture): number => Math.sqrt(Math.abs(determinant(toPattern)));
