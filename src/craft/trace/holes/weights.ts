import type { Evidence } from './evidence.ts';

/** Of a logistic regression: what one unit of each piece of evidence adds to the log odds of a pin. */
export interface Weights {
  readonly bias: number;
  readonly of: Readonly<Partial<Record<keyof Evidence, number>>>;
}

/**
 * Fitted by maximum likelihood to some 72,000 candidates of generated and rendered pages whose truth is known: prints,
 * photocopies and old cards of four kinds of lace, with pins left out so that bare crossings are among them. `alone` judges
 * a candidate by itself, `among` beside the clear dots of its page.
 */
export const WEIGHTS: { readonly alone: Weights; readonly among: Weights } = {
  alone: {
    bias: -17.34,
    of: {
      scatter: -16.65,
      close: 11.18,
      bulge: 3.89,
      stands: 4.49,
      lean: 2.83,
      over: 20.31,
      lines: 10.6,
      bare: -0.48,
      long: 8.48,
      alone: 5.22,
      offDepth: -2.85,
      offSize: -13.61,
      inset: -48.09,
      beyond: 8.56,
    },
  },
  among: {
    bias: -14.49,
    of: {
      scatter: -19.49,
      close: 10.07,
      bulge: 4.04,
      stands: 4.25,
      lean: 3.63,
      over: 19.58,
      lines: 8.26,
      bare: -0.65,
      long: 2.78,
      alone: 1.24,
      offDepth: -4.97,
      offSize: -18.41,
      inset: -30.29,
      beyond: 5.81,
      between: 0.88,
      onward: 3.16,
      spacing: 5.42,
      lettering: -8.72,
      crowded: -0.46,
    },
  },
};
