import { compose, scaling } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import { mapAnchors } from './anchors.ts';
import type { Anchor, Mark, PaperPicture, Pattern, Scale, Sizes } from './pattern.ts';
import { scaledRecipe } from './recipe/scaled.ts';

export interface ScaleChoice {
  /** Whether pins, holes and gimps grow too, as on a copier; else they stay as thick as they are. */
  readonly thickness?: boolean;
}

/**
 * The same pattern `factor` times as large about its origin: places, spacings, lettering, the picture of its paper, and
 * the millimetres of its recipe. A recipe that cannot be drafted at that size is dropped. The card keeps its thickness.
 * Throws unless `factor` is a number above nought.
 */
export function scalePattern(
  pattern: Pattern,
  factor: number,
  { thickness = false }: ScaleChoice = {},
): Pattern {
  if (!(factor > 0) || !Number.isFinite(factor)) throw new RangeError(`scalePattern: factor ${factor}`);
  const { repeat, sheet, paper, recipe, ...rest } = pattern;
  const at = (point: Point): Point => ({ x: point.x * factor, y: point.y * factor });
  const anchored = (anchor: Anchor): Anchor => ('pin' in anchor ? anchor : at(anchor));
  const made = recipe && scaledRecipe(recipe, factor);
  return {
    ...rest,
    pins: pattern.pins.map((pin) => ({
      ...pin,
      ...at(pin),
      ...(thickness && pin.diameter !== undefined && { diameter: pin.diameter * factor }),
    })),
    marks: pattern.marks.map((mark) => scaledMark(mapAnchors(mark, anchored), factor, thickness)),
    areas: pattern.areas.map((area) => ({ ...area, outline: area.outline.map(anchored) })),
    sizes: scaledSizes(pattern.sizes, factor, thickness),
    scale: scaledScale(pattern.scale, factor),
    ...(repeat && { repeat: { ...repeat, step: at(repeat.step) } }),
    ...(sheet && { sheet: { width: sheet.width * factor, height: sheet.height * factor } }),
    ...(paper && { paper: scaledPaper(paper, factor, at) }),
    ...(made && { recipe: made }),
  };
}

function scaledMark(mark: Mark, factor: number, thickness: boolean): Mark {
  if (mark.kind === 'text') return { ...mark, height: mark.height * factor };
  if (mark.kind === 'gimp' && mark.width !== undefined && thickness)
    return { ...mark, width: mark.width * factor };
  return mark;
}

const scaledSizes = (sizes: Sizes, factor: number, thickness: boolean): Sizes => ({
  ...sizes,
  ...(sizes.footsideSpacing !== undefined && { footsideSpacing: sizes.footsideSpacing * factor }),
  ...(thickness && sizes.pin !== undefined && { pin: sizes.pin * factor }),
  ...(thickness && sizes.hole !== undefined && { hole: sizes.hole * factor }),
});

/** The dots of the paper's picture lie further apart in the larger pattern. */
function scaledScale(scale: Scale, factor: number): Scale {
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

const scaledPaper = (paper: PaperPicture, factor: number, at: (point: Point) => Point): PaperPicture => ({
  ...paper,
  toPattern: compose(scaling(factor), paper.toPattern),
  ...(paper.stood && {
    stood: Object.fromEntries(Object.entries(paper.stood).map(([pin, place]) => [pin, at(place)])),
  }),
});
