import type { Evidence } from './evidence.ts';

/** Of a logistic regression: what one unit of each piece of evidence adds to the log odds of a pin. */
export interface Weights {
  readonly bias: number;
  readonly of: Readonly<Partial<Record<keyof Evidence, number>>>;
}

export const WEIGHTS: { readonly alone: Weights; readonly among: Weights } = {
  alone: {
    bias: -15.75,
    of: {
      scatter: -17.38,
      close: 10.02,
      bulge: 7.28,
      stands: 1.07,
      lean: 2.16,
      over: 21.20,
      lines: 10.05,
      bare: -0.43,
      long: 8.11,
      alone: 4.29,
      offDepth: -3.90,
      offSize: -21.84,
      beyond: 7.19,
      swell: 0.83,
    },
  },
  among: {
    bias: -12.52,
    of: {
      scatter: -21.21,
      close: 9.35,
      bulge: 6.78,
      stands: 0.76,
      lean: 3.17,
      over: 19.02,
      lines: 8.13,
      bare: -2.10,
      long: 2.00,
      alone: 0.33,
      offDepth: -5.60,
      offSize: -23.10,
      beyond: 6.56,
      swell: 1.08,
      between: 0.90,
      onward: 3.21,
      spacing: 5.03,
      lettering: -9.08,
      crowded: -0.64,
    },
  },
};
