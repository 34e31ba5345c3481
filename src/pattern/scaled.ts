import { compose, scaling } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import { mapAnchors } from './anchors.ts';
import type { Anchor, Mark, PaperPicture, Pattern, Scale, Sizes } from './pattern.ts';
import { scaledRecipe } from './recipe/scaled.ts';

export interface ScalingOptions {
  /** Whether pinholes and pins grow too. A hole is as wide as its pin, whatever the pattern's size, unless this is said. */
  readonly diameters?: boolean;
}

/**
 * The same pattern `factor` times as large about its origin: places, spacings, lettering, the picture of its paper, and
 * the millimetres of its recipe. A recipe that cannot be drafted at that size is dropped. The card keeps its thickness.
 * Throws unless `factor` is a number above nought.
 */
export function scaledPattern(
  pattern: Pattern,
  factor: number,
  { diameters = false }: ScalingOptions = {},
): Pattern {
  if (!(factor > 0) || !Number.isFinite(factor)) throw new RangeError(`scaledPattern: factor ${factor}`);
  const { repeat, sheet, paper, recipe, ...rest } = pattern;
  const at = (point: Point): Point => ({ x: point.x * factor, y: point.y * factor });
  const anchored = (anchor: Anchor): Anchor => ('pin' in anchor ? anchor : at(anchor));
  const made = recipe && scaledRecipe(recipe, factor);
  return {
    ...rest,
    pins: pattern.pins.map((pin) => ({
      ...pin,
      ...at(pin),
      ...(diameters && pin.diameter !== undefined && { diameter: pin.diameter * factor }),
    })),
    marks: pattern.marks.map((mark) => scaledMark(mapAnchors(mark, anchored), factor)),
    areas: pattern.areas.map((area) => ({ ...area, outline: area.outline.map(anchored) })),
    sizes: scaledSizes(pattern.sizes, factor, diameters),
    scale: scaledScale(pattern.scale, factor),
    ...(repeat && { repeat: { ...repeat, step: at(repeat.step) } }),
    ...(sheet && { sheet: { width: sheet.width * factor, height: sheet.height * factor } }),
    ...(paper && { paper: scaledPaper(paper, factor, at) }),
    ...(made && { recipe: made }),
  };
}

function scaledMark(mark: Mark, factor: number): Mark {
  if (mark.kind === 'text') return { ...mark, height: mark.height * factor };
  if (mark.kind === 'gimp' && mark.width !== undefined) return { ...mark, width: mark.width * factor };
  return mark;
}

const scaledSizes = (sizes: Sizes, factor: number, diameters: boolean): Sizes => ({
  ...sizes,
  ...(sizes.footsideSpacing !== undefined && { footsideSpacing: sizes.footsideSpacing * factor }),
  ...(diameters && sizes.pin !== undefined && { pin: sizes.pin * factor }),
  ...(diameters && sizes.hole !== undefined && { hole: sizes.hole * factor }),
});

/** A dot of the paper's picture now covers more or less than its file says, so that the number is one given by hand. */
function scaledScale(scale: Scale, factor: number): Scale {
  switch (scale.from) {
    case 'none':
    case 'drafted':
      return scale;
    case 'file':
    case 'given':
      return { from: 'given', dpi: scale.dpi / factor };
    case 'span':
      return { ...scale, dpi: scale.dpi / factor, length: scale.length * factor };
  }
}

const scaledPaper = (paper: PaperPicture, factor: number, at: (point: Point) => Point): PaperPicture => ({
  ...paper,
  toPattern: compose(scaling(factor), paper.toPattern),
  ...(paper.stood && {
    stood: Object.fromEntries(Object.entries(paper.stood).map(([pin, place]) => [pin, at(place)])),
  }),
});
