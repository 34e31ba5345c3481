import type { Evidence } from './evidence.ts';

/** Of a logistic regression: what one unit of each piece of evidence adds to the log odds of a pin. */
export interface Weights {
  readonly bias: number;
  readonly of: Readonly<Partial<Record<keyof Evidence, number>>>;
}

export const WEIGHTS: { readonly alone: Weights; readonly among: Weights } = {
  alone: {
    bias: -14.93,
    of: {
      scatter: -12.9,
      close: 11.12,
      bulge: 3.06,
      stands: 5.4,
      lean: 2.98,
      over: 27.32,
      lines: 5.2,
      bare: 6.58,
      long: 6.12,
      alone: 2.69,
      offDepth: -14.2,
      offSize: -10.39,
    },
  },
  among: {
    bias: -15.52,
    of: {
      scatter: -13.57,
      close: 9.24,
      bulge: 3.39,
      stands: 4.47,
      lean: 3.61,
      over: 22.44,
      lines: 5.56,
      bare: 5.19,
      long: 1.35,
      alone: -0.2,
      offDepth: -11.37,
      offSize: -10.43,
      between: 1.21,
      onward: 5.71,
      spacing: 6.05,
      lettering: -3.83,
    },
  },
};
