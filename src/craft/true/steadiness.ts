import { quantile } from '#base/fit/robust.ts';
import type { Chain } from './chain.ts';
import type { Field } from './field.ts';

/**
 * Jitter per coordinate that a hand left along chains, from differences of high order, which a smooth course hardly has
 * and jitter has everywhere (J. Rice, The Annals of Statistics 12 (1984) 1215, and later authors). The middle one of
 * all is taken, so that a corner or a pointed end here and there says nothing. Null where no chain is long enough.
 */
export function jitterAlong({ pins }: Field, chains: readonly Chain[]): number | null {
  const differences = chains.flatMap((chain) => {
    const values: number[] = [];
    for (let k = 0; k + ORDER < chain.pins.length; k++) {
      if (chain.steps.slice(k, k + ORDER).some((step) => step !== 1)) continue;
      let [x, y] = [0, 0];
      BINOMIALS.forEach((weight, d) => {
        const pin = pins[chain.pins[k + d]!]!;
        x += weight * pin.x;
        y += weight * pin.y;
      });
      values.push(Math.abs(x), Math.abs(y));
    }
    return values;
  });
  return differences.length === 0 ? null : quantile(differences, 0.5) / (SPREAD * MIDDLE);
}

/** Differences of sixth order: a smooth course that turns by 20 degrees a pin leaves a thousandth of a step in them. */
const ORDER = 6;
const BINOMIALS = [1, -6, 15, -20, 15, -6, 1];
/** Standard deviation of such a difference, in that of one pin: the root of the sum of the squared weights. */
const SPREAD = Math.sqrt(924);
/** The middle of normally spread values' sizes, in standard deviations. */
const MIDDLE = 0.6745;
