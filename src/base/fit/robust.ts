/** The middle value (mean of the two middle ones where their number is even); NaN of nothing. */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}

/**
 * The value below which a share `q` (0 to 1) of the values lies, linear between neighbours
 * (type 7 of Hyndman & Fan, The American Statistician 50 (1996)); NaN of nothing.
 */
export function quantile(values: ArrayLike<number>, q: number): number {
  if (values.length === 0) return Number.NaN;
  const sorted = Float64Array.from(values).sort();
  const place = q * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (high - low) * (place - below);
}

/** Makes the median absolute deviation of normal noise equal to its standard deviation: 1 / Phi^-1(3/4). */
const NORMAL_MAD = 1.4826;

/** Median absolute deviation from the median, scaled to be the standard deviation where the noise is normal. */
export function medianDeviation(values: ArrayLike<number>): number {
  const middle = median(values);
  return NORMAL_MAD * median(Float64Array.from(values, (value) => Math.abs(value - middle)));
}

/** The median distance of a plane point from its place when both coordinates err by a standard deviation of 1. */
const RAYLEIGH_MEDIAN = Math.sqrt(2 * Math.LN2);

/** Standard deviation per coordinate of plane errors, from their distances; not upset by a minority of outliers. */
export const deviationOfDistances = (distances: ArrayLike<number>): number =>
  median(distances) / RAYLEIGH_MEDIAN;

/** Weight of Tukey's biweight: 1 at no error, 0 from `reach` outward. */
export function biweight(error: number, reach: number): number {
  const ratio = error / reach;
  return Math.abs(ratio) >= 1 ? 0 : (1 - ratio * ratio) ** 2;
}
