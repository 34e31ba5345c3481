/** A smoothed sequence and what it cost. */
export interface Smoothed {
  /** One fitted sequence for each given one. */
  readonly fits: readonly Float64Array[];
  /** Degrees of freedom that each fitted sequence keeps: the trace of the smoother over the weighted places. */
  readonly freedom: number;
  /** Weighted sum of squared residuals over all sequences. */
  readonly squares: number;
}

/**
 * Smooths sequences that share their weights by penalised least squares: `sum w (y - z)^2 + lambda sum (D^order z)^2`
 * (Whittaker, Proc. Edinburgh Math. Soc. 41 (1923); Eilers, Analytical Chemistry 75 (2003)). Places of weight 0 are
 * filled in. As lambda grows the fit tends to a polynomial of degree `order - 1`. Cost grows with the length.
 */
export function smoothSequences(
  sequences: readonly Float64Array[],
  weights: Float64Array,
  order: number,
  lambda: number,
): Smoothed {
  const n = weights.length;
  const { lower, diagonal } = factor(penalty(weights, order, lambda), n, order);
  const fits = sequences.map((values) => solve(lower, diagonal, values, weights, order));
  const inverse = inverseDiagonal(lower, diagonal, n, order);
  let freedom = 0;
  for (let i = 0; i < n; i++) freedom += weights[i]! * inverse[i]!;
  let squares = 0;
  sequences.forEach((values, s) => {
    for (let i = 0; i < n; i++) squares += weights[i]! * (values[i]! - fits[s]![i]!) ** 2;
  });
  return { fits, freedom, squares };
}

/** The bands of `W + lambda D'D`: entry `k * n + i` couples place i with place i + k. */
function penalty(weights: Float64Array, order: number, lambda: number): Float64Array {
  const n = weights.length;
  const bands = new Float64Array((order + 1) * n);
  bands.set(weights);
  const stencil = differences(order);
  for (let start = 0; start + order < n; start++) {
    for (let p = 0; p <= order; p++) {
      for (let q = p; q <= order; q++) bands[(q - p) * n + start + p]! += lambda * stencil[p]! * stencil[q]!;
    }
  }
  return bands;
}

/** Coefficients of the forward difference: 1, -1; 1, -2, 1; ... */
function differences(order: number): number[] {
  let stencil = [1];
  for (let k = 0; k < order; k++) {
    stencil = [...stencil, 0].map((value, i) => value - (i > 0 ? stencil[i - 1]! : 0));
  }
  return stencil;
}

/** Banded LDL' factors; `lower[k * n + i]` is the factor between places i and i + k. */
function factor(
  bands: Float64Array,
  n: number,
  width: number,
): { lower: Float64Array; diagonal: Float64Array } {
  const lower = new Float64Array((width + 1) * n);
  const diagonal = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let pivot = bands[i]!;
    for (let k = 1; k <= Math.min(width, i); k++) pivot -= lower[k * n + i - k]! ** 2 * diagonal[i - k]!;
    diagonal[i] = pivot;
    for (let q = 1; q <= width && i + q < n; q++) {
      let value = bands[q * n + i]!;
      for (let k = 1; k + q <= width && k <= i; k++) {
        value -= lower[k * n + i - k]! * lower[(k + q) * n + i - k]! * diagonal[i - k]!;
      }
      lower[q * n + i] = value / pivot;
    }
  }
  return { lower, diagonal };
}

function solve(
  lower: Float64Array,
  diagonal: Float64Array,
  values: Float64Array,
  weights: Float64Array,
  width: number,
): Float64Array {
  const n = diagonal.length;
  const z = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let value = weights[i]! * values[i]!;
    for (let k = 1; k <= Math.min(width, i); k++) value -= lower[k * n + i - k]! * z[i - k]!;
    z[i] = value;
  }
  for (let i = n - 1; i >= 0; i--) {
    let value = z[i]! / diagonal[i]!;
    for (let k = 1; k <= width && i + k < n; k++) value -= lower[k * n + i]! * z[i + k]!;
    z[i] = value;
  }
  return z;
}

/** The diagonal of the inverse from its banded factors (Hutchinson & de Hoog, Numerische Mathematik 47 (1985)). */
function inverseDiagonal(
  lower: Float64Array,
  diagonal: Float64Array,
  n: number,
  width: number,
): Float64Array {
  const inverse = new Float64Array((width + 1) * n);
  const at = (i: number, j: number): number => inverse[Math.abs(i - j) * n + Math.min(i, j)]!;
  for (let i = n - 1; i >= 0; i--) {
    for (let q = Math.min(width, n - 1 - i); q >= 0; q--) {
      let value = q === 0 ? 1 / diagonal[i]! : 0;
      for (let k = 1; k <= width && i + k < n; k++) value -= lower[k * n + i]! * at(i + k, i + q);
      inverse[q * n + i] = value;
    }
  }
  return inverse.subarray(0, n);
}
