import type { Evidence } from './evidence.ts';

/** Of a logistic regression: what one unit of each piece of evidence adds to the log odds of a pin. */
export interface Weights {
  readonly bias: number;
  readonly of: Readonly<Partial<Record<keyof Evidence, number>>>;
}

export const WEIGHTS: { readonly alone: Weights; readonly among: Weights } = {
  alone: {
    bias: -15.5,
    of: {
      scatter: -21.22,
      close: 10.61,
      bulge: 7.85,
      stands: 1.33,
      lean: 2.88,
      over: 28.86,
      lines: 8.93,
      bare: 6.24,
      long: 8.17,
      alone: 4.32,
      offDepth: -4.44,
      offSize: -21.86,
    },
  },
  among: {
    bias: -14.66,
    of: {
      scatter: -22.69,
      close: 10.55,
      bulge: 9.16,
      stands: 0.56,
      lean: 3.76,
      over: 24.57,
      lines: 8.34,
      bare: 3.39,
      long: 1.74,
      alone: 0.17,
      offDepth: -6.61,
      offSize: -22.91,
      between: 1.32,
      onward: 5.01,
      spacing: 6.86,
      lettering: -9.66,
      crowded: -1.04,
    },
  },
};
