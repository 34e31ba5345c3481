import { scaling } from '#base/geometry/affine.ts';
import type { Mark, Pattern, Pin, Scale, Sizes } from '#pattern/pattern.ts';
import { moved } from './move.ts';

export interface ScaleChoice {
  /** Whether pins, holes and gimps grow too, as on a copier; else they stay as thick as they are. */
  readonly thickness: boolean;
}

/**
 * The pattern enlarged by `factor` from the origin, with its sheet: places, steps, spacings and heights of letters.
 * The thickness of the card never changes. Throws where the factor is not above 0.
 */
export function scalePattern(
  pattern: Pattern,
  factor: number,
  { thickness }: ScaleChoice = { thickness: false },
): Pattern {
  if (!(factor > 0) || !Number.isFinite(factor)) throw new RangeError(`scalePattern: factor is ${factor}`);
  const grown = moved(pattern, scaling(factor));
  const { sheet } = pattern;
  const thick = thickness ? factor : 1;
  return {
    ...grown,
    pins: thickness ? grown.pins.map((pin) => grownPin(pin, factor)) : grown.pins,
    marks: grown.marks.map((mark) => grownMark(mark, factor, thick)),
    sizes: grownSizes(pattern.sizes, factor, thick),
    scale: grownScale(pattern.scale, factor),
    ...(sheet && { sheet: { width: sheet.width * factor, height: sheet.height * factor } }),
  };
}

const grownPin = (pin: Pin, factor: number): Pin =>
  pin.diameter === undefined ? pin : { ...pin, diameter: pin.diameter * factor };

function grownMark(mark: Mark, factor: number, thick: number): Mark {
  if (mark.kind === 'text') return { ...mark, height: mark.height * factor };
  if (mark.kind === 'gimp' && mark.width !== undefined) return { ...mark, width: mark.width * thick };
  return mark;
}

function grownSizes(sizes: Sizes, factor: number, thick: number): Sizes {
  const { pin, hole, footsideSpacing } = sizes;
  return {
    ...sizes,
    ...(pin !== undefined && { pin: pin * thick }),
    ...(hole !== undefined && { hole: hole * thick }),
    ...(footsideSpacing !== undefined && { footsideSpacing: footsideSpacing * factor }),
  };
}

/** The picture's pixels lie further apart in the larger pattern. */
function grownScale(scale: Scale, factor: number): Scale {
  switch (scale.from) {
    case 'none':
    case 'drafted':
      return scale;
    case 'file':
    case 'given':
      return { ...scale, dpi: scale.dpi / factor };
    case 'span':
      return { ...scale, dpi: scale.dpi / factor, length: scale.length * factor };
  }
}
