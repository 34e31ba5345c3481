import type { Evidence } from './evidence.ts';

/** Of a logistic regression: what one unit of each piece of evidence adds to the log odds of a pin. */
export interface Weights {
  readonly bias: number;
  readonly of: Readonly<Partial<Record<keyof Evidence, number>>>;
}

export const WEIGHTS: { readonly alone: Weights; readonly among: Weights } = {
  alone: {
    bias: -16.36,
    of: {
      scatter: -18.85,
      close: 11.41,
      bulge: 8.51,
      stands: 1.41,
      lean: 2.78,
      over: 27.01,
      lines: 9.36,
      bare: 5.41,
      long: 8.30,
      alone: 4.86,
      offDepth: -4.38,
      offSize: -22.31,
    },
  },
  among: {
    bias: -16.55,
    of: {
      scatter: -19.70,
      close: 11.81,
      bulge: 8.65,
      stands: 1.40,
      lean: 3.60,
      over: 24.11,
      lines: 7.85,
      bare: 2.64,
      long: 2.77,
      alone: 1.14,
      offDepth: -5.54,
      offSize: -21.98,
      between: 1.34,
      onward: 4.46,
      spacing: 6.78,
      lettering: -9.32,
      crowded: -0.84,
    },
  },
};
