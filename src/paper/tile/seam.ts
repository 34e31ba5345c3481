/**
 * Where one window ends for the reader and the next begins: a line within their overlap, where the upper sheet
 * is cut. It keeps away from hole centres where the overlap leaves it a place to do so.
 */
export interface Seam {
  readonly at: number;
  /** Distance of the nearest hole centre, mm, at most `SEAM_CLEARANCE`. */
  readonly clearance: number;
}

/** How far a cut should keep from hole centres, mm. */
export const SEAM_CLEARANCE = 2;

/**
 * The place in the overlap from `from` to `to` for a cut: at least `SEAM_CLEARANCE` from all of the holes' positions
 * across the seam where there is such a place, else as far from them as can be; the nearest such place to the middle.
 */
export function placeSeam(from: number, to: number, positions: readonly number[]): Seam {
  const middle = (from + to) / 2;
  // Both sheets keep room beside the cut for the registration crosses that lie on it.
  const reach = Math.max(0, (to - from) / 2 - CROSS_ROOM);
  const near = positions
    .filter((at) => Math.abs(at - middle) < reach + SEAM_CLEARANCE)
    .sort((one, other) => one - other);
  const clearanceAt = (at: number): number =>
    near.reduce((least, hole) => Math.min(least, Math.abs(hole - at)), SEAM_CLEARANCE);
  let best: Seam = { at: middle, clearance: clearanceAt(middle) };
  for (let step = 1; step * STEP <= reach; step++) {
    for (const at of [middle - step * STEP, middle + step * STEP]) {
      const clearance = clearanceAt(at);
      if (clearance > best.clearance + 1e-9) best = { at, clearance };
    }
    if (best.clearance >= SEAM_CLEARANCE) break;
  }
  return best;
}

const STEP = 0.1;
const CROSS_ROOM = 2;
