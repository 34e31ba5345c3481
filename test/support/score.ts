import type { PixelPoint } from '#base/geometry/point.ts';

/** How found places agree with true ones. Distances are in the unit of `reach`. */
export interface Score {
  readonly right: number;
  readonly false: number;
  readonly missed: number;
  readonly f1: number;
  /** Root mean square distance of the right ones from their truth. */
  readonly rms: number;
  /** For each found place, whether it is right; null where it lies on a hidden one, which counts neither way. */
  readonly verdicts: readonly (boolean | null)[];
}

/**
 * Pairs found with true places one to one, nearest first, within `reach` pixels. True places that nobody can see
 * (`hidden`) count neither as found nor as missed.
 */
export function scoreHoles(
  found: readonly PixelPoint[],
  truth: readonly (PixelPoint & { readonly hidden: boolean })[],
  reach: number,
): Score {
  const pairs: { far: number; hole: number; pin: number }[] = [];
  const byRow = truth.map((_, pin) => pin).sort((a, b) => truth[a]!.row - truth[b]!.row);
  found.forEach(({ column, row }, hole) => {
    for (let at = firstFrom(byRow, truth, row - reach); at < byRow.length; at++) {
      const pin = byRow[at]!;
      if (truth[pin]!.row > row + reach) break;
      const far = Math.hypot(truth[pin]!.column - column, truth[pin]!.row - row);
      if (far <= reach) pairs.push({ far, hole, pin });
    }
  });
  pairs.sort((a, b) => a.far - b.far);
  const verdicts: (boolean | null)[] = found.map(() => false);
  const matched = new Set<number>();
  const taken = new Set<number>();
  let squares = 0;
  let right = 0;
  for (const { far, hole, pin } of pairs) {
    if (matched.has(hole) || taken.has(pin)) continue;
    matched.add(hole);
    taken.add(pin);
    verdicts[hole] = truth[pin]!.hidden ? null : true;
    if (truth[pin]!.hidden) continue;
    right++;
    squares += far * far;
  }
  const wrong = verdicts.filter((verdict) => verdict === false).length;
  const missed = truth.filter(({ hidden }) => !hidden).length - right;
  return {
    right,
    false: wrong,
    missed,
    f1: right === 0 ? 0 : (2 * right) / (2 * right + wrong + missed),
    rms: Math.sqrt(squares / Math.max(1, right)),
    verdicts,
  };
}

function firstFrom(order: readonly number[], places: readonly PixelPoint[], row: number): number {
  let low = 0;
  let high = order.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[order[middle]!]!.row < row) low = middle + 1;
    else high = middle;
  }
  return low;
}
