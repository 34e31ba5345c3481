import { type Affine, compose, invert, rotation, translation } from '#base/geometry/affine.ts';
import type { PaperSize } from '#base/units/paper.ts';

/**
 * What a printer has to be told so that its prints are true, in the axes of upright paper: factors for both axes
 * (nominal length by measured length), and by how many mm a mm down leans to the right, where that is corrected.
 */
export interface PrinterCorrection {
  readonly x: number;
  readonly y: number;
  readonly lean: number;
}

export const noCorrection: PrinterCorrection = { x: 1, y: 1, lean: 0 };

/** The factors for a sheet as it lies: a sheet that lies on its side takes the other axis's factor. */
export const factorsFor = (correction: PrinterCorrection, paper: PaperSize): { x: number; y: number } =>
  paper.width > paper.height ? { x: correction.y, y: correction.x } : { x: correction.x, y: correction.y };

/**
 * Where ink must be put so that the printer, which stretches and shears, puts it where it belongs. The middle of the
 * page stays where it is. The printer maps (x, y) to (x / fx + lean y, y / fy); this is the way back.
 */
export function correctionMap(correction: PrinterCorrection, paper: PaperSize): Affine {
  const { x, y, lean } = correction;
  const upright = invert({ a: 1 / x, b: 0, c: lean, d: 1 / y, e: 0, f: 0 });
  const quarter = rotation(Math.PI / 2);
  const lying = paper.width > paper.height ? compose(invert(quarter), compose(upright, quarter)) : upright;
  const middle = { x: paper.width / 2, y: paper.height / 2 };
  return compose(translation(middle.x, middle.y), compose(lying, translation(-middle.x, -middle.y)));
}
