import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';

/** Places across a line are sampled this many units to each side; a unit is a share of the usual dot (see `Ruler`). */
const SIDE = 7;
const ACROSS = 2 * SIDE + 1;
/**
 * A line may run this many units beside the straight way between two dots, which still leads it into both: hands and
 * copiers bend lines, and a dot pricked off its place does not take its lines with it.
 */
const STRAY = 3;

/** How finely a page is measured: a unit is a ninth of the usual dot's diameter, but at least 0.7 pixels. */
export interface Ruler {
  readonly unit: number;
  /** Diameter of the usual dot, pixels. */
  readonly dot: number;
}

export const rulerFor = (dot: number): Ruler => ({ unit: Math.max(0.7, dot / 9), dot });

/** What was seen at one step along a way. */
export interface Step {
  /** How much darker than both its sides, grey levels; negative or small where there is no thin line. */
  contrast: number;
  /** Pixels to the left of the way, as seen when walking along it on a sheet whose rows run down. */
  offset: number;
  /** Grey of the darkest place there, 0 to 255. */
  grey: number;
}

/** The steps of a whole way, value by value (see `Step`). */
export interface Profile {
  readonly contrast: Float32Array;
  readonly offset: Float32Array;
  readonly grey: Float32Array;
}

/**
 * Looks for thin lines. A step is dark only where it is darker than BOTH its sides close by, so that the inside and the
 * edge of a thick line count for nothing.
 */
export class Looker {
  readonly ruler: Ruler;
  private readonly picture: GreyPicture;
  private readonly step: Step = { contrast: 0, offset: 0, grey: 0 };
  private readonly mean = new Float32Array(ACROSS);
  /** Kept from one way to the next, since there are thousands. */
  private rows = new Float32Array(64 * ACROSS);

  constructor(picture: GreyPicture, ruler: Ruler) {
    this.picture = picture;
    this.ruler = ruler;
  }

  /** One place of a way that leads in the direction (`x`, `y`) of length 1. The next call changes what this one gave. */
  look(column: number, row: number, x: number, y: number): Step {
    const { unit } = this.ruler;
    acrossAt(this.picture, column, row, y * unit, -x * unit, this.mean, 0);
    judge(this.mean, unit, this.step);
    return this.step;
  }

  /** The whole straight way from one place to another, step by step. */
  along(from: PixelPoint, to: PixelPoint): Profile {
    const { unit } = this.ruler;
    const dx = to.column - from.column;
    const dy = to.row - from.row;
    const size = Math.hypot(dx, dy);
    const count = Math.max(2, Math.ceil(size / unit) + 1);
    if (count * ACROSS > this.rows.length) this.rows = new Float32Array(2 * count * ACROSS);
    const { rows, mean, step } = this;
    const [leftX, leftY] = size === 0 ? [0, 0] : [(dy / size) * unit, (-dx / size) * unit];
    for (let k = 0; k < count; k++) {
      const t = k / (count - 1);
      acrossAt(this.picture, from.column + t * dx, from.row + t * dy, leftX, leftY, rows, k * ACROSS);
    }
    const contrast = new Float32Array(count);
    const offset = new Float32Array(count);
    const grey = new Float32Array(count);
    for (let k = 0; k < count; k++) {
      // Three steps together even out the noise.
      const before = Math.max(0, k - 1) * ACROSS;
      const after = Math.min(count - 1, k + 1) * ACROSS;
      for (let n = 0; n < ACROSS; n++) {
        mean[n] = (rows[before + n]! + rows[k * ACROSS + n]! + rows[after + n]!) / 3;
      }
      judge(mean, unit, step);
      contrast[k] = step.contrast;
      offset[k] = step.offset;
      grey[k] = step.grey;
    }
    return { contrast, offset, grey };
  }
}

/** Grey between pixels, by the four round the place; the picture's edge goes on beyond it. */
export function greyAt({ grey, width, height }: GreyPicture, column: number, row: number): number {
  const x = Math.min(width - 1, Math.max(0, column));
  const y = Math.min(height - 1, Math.max(0, row));
  const left = Math.floor(x);
  const top = Math.floor(y);
  const right = left + 1 < width ? 1 : 0;
  const below = top + 1 < height ? width : 0;
  const index = top * width + left;
  const u = x - left;
  const upper = grey[index]! * (1 - u) + grey[index + right]! * u;
  const lower = grey[index + below]! * (1 - u) + grey[index + below + right]! * u;
  return upper + (lower - upper) * (y - top);
}

function acrossAt(
  picture: GreyPicture,
  column: number,
  row: number,
  leftX: number,
  leftY: number,
  out: Float32Array,
  start: number,
): void {
  for (let n = -SIDE; n <= SIDE; n++) {
    out[start + n + SIDE] = greyAt(picture, column + n * leftX, row + n * leftY);
  }
}

function judge(across: Float32Array, unit: number, step: Step): void {
  let best = SIDE;
  for (let n = SIDE - STRAY; n <= SIDE + STRAY; n++) if (across[n]! < across[best]!) best = n;
  let left = 0;
  let right = 0;
  for (let n = 2; n <= 4; n++) {
    if (across[best - n]! > right) right = across[best - n]!;
    if (across[best + n]! > left) left = across[best + n]!;
  }
  step.contrast = Math.min(left, right) - across[best]!;
  step.offset = (best - SIDE) * unit;
  step.grey = across[best]!;
}
