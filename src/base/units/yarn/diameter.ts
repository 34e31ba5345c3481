import { MM_PER_INCH } from '../length.ts';
import { type Fibre, fibreDensity } from './fibre.ts';
import { texOfCount } from './system.ts';

/**
 * How much of a thread's cross-section is fibre, the rest being air: the usual figure for spun yarns, near the 0.646
 * behind the textbook's d[cm] = 4.44e-3 sqrt(tex / density).
 */
const PACKING = 0.65;

/**
 * A thread wound side by side on a ruler takes more room than its closest form. Common practice counts 0.7 of the
 * diameters that fit an inch by Ashenhurst as wraps; measured windings of linen 80/2 and 35/2 (30 and 20 a cm) are
 * 0.70 of the closest form too.
 */
const WRAPPED_SHARE = 0.7;

/** sqrt(4 / (1000 pi)): mm for a tex of 1 at 1 g/cm3. */
const ROUND = Math.sqrt(4 / (1000 * Math.PI));

/** Density of Peirce's cotton, g/cm3: what makes d = 1 / (28 sqrt(Ne)) inch of the round cylinder's formula. */
const PEIRCE_COTTON = texOfCount({ system: 'Ne', count: 1 }) * (ROUND / (MM_PER_INCH / 28)) ** 2;

/** A thread's thickness in two states, mm. */
export interface Diameters {
  /** Pulled tight among others, as in a firm cloth stitch. */
  readonly compact: number;
  /** As it lies wound side by side on a ruler, unpressed. */
  readonly wrapped: number;
}

/** Diameter of a round thread, mm, whose own density (air and all) is given in g/cm3. */
export const roundDiameter = (tex: number, density: number): number => ROUND * Math.sqrt(tex / density);

/**
 * Density of a thread in its closest form, g/cm3. Cotton by F. T. Peirce, J. Text. Inst. 28 (1937), T45:
 * d = 1 / (28 sqrt(Ne)) inch; all others by the fibre's density times the packing.
 */
export const compactDensity = (fibre: Fibre): number =>
  fibre === 'cotton' ? PEIRCE_COTTON : fibreDensity[fibre] * PACKING;

/** Both diameters of a thread of `tex`, as far as its fibre and weight tell. */
export function diametersOf(tex: number, fibre: Fibre): Diameters {
  const compact = roundDiameter(tex, compactDensity(fibre));
  return { compact, wrapped: compact / WRAPPED_SHARE };
}

/** Both diameters of a thread whose windings on a ruler were counted. */
export function diametersOfWraps(wrapsPerCm: number): Diameters {
  const wrapped = wrapsPerCmOf(wrapsPerCm);
  return { compact: wrapped * WRAPPED_SHARE, wrapped };
}

/** How many lie side by side in a centimetre, from the diameter in mm; and the diameter from how many. */
export const wrapsPerCmOf = (diameter: number): number => 10 / diameter;

/** The tex that a thread of this fibre must have to wind so many times round a centimetre of ruler. */
export function texOfWraps(wrapsPerCm: number, fibre: Fibre): number {
  const { compact } = diametersOfWraps(wrapsPerCm);
  return compactDensity(fibre) * (compact / ROUND) ** 2;
}
