/** How one thread runs over and under those that it crosses. */
export interface Interlacing {
  /** Steepest angle of the thread to the cloth, radians. */
  readonly angle: number;
  /** Length of thread from one crossing to the next, in the unit of the spacing. */
  readonly length: number;
  /** Length used up beyond the straight way, as a share of it: 0.1 where 1.1 m lie in 1 m of cloth. */
  readonly crimp: number;
}

/**
 * A thread that crosses others standing `spacing` apart and rises and falls by `height` each way between them, all
 * round and stiff; `sum` is the two diameters together. Null where they stand too close for it to pass at all.
 *
 * F. T. Peirce, J. Text. Inst. 28 (1937), T45: p = (l - D t) cos t + D sin t and h = (l - D t) sin t + D (1 - cos t).
 * With l taken out these leave p sin t + (D - h) cos t = D, which is solved exactly, not by the usual rules of thumb
 * h = 4/3 p sqrt(c) or 1.36 p sqrt(c), which miss the crimp by up to an eighth in open cloth.
 */
export function interlacing(spacing: number, height: number, sum: number): Interlacing | null {
  const reach = Math.hypot(spacing, sum - height);
  // Packed full, reach and sum are equal but for rounding.
  if (reach < sum * (1 - 1e-12)) return null;
  const angle = Math.asin(Math.min(1, sum / reach)) - Math.atan2(sum - height, spacing);
  const straight = Math.sqrt(Math.max(0, reach ** 2 - sum ** 2));
  const length = straight + sum * angle;
  return { angle, length, crimp: length / spacing - 1 };
}

/** How far a thread can rise and fall between others that stand `spacing` apart, until it lies against them all the way. */
export const mostHeight = (spacing: number, sum: number): number =>
  spacing >= sum ? sum : sum * (1 - Math.sqrt(1 - (spacing / sum) ** 2));
