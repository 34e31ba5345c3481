import { describe, expect, it } from 'vitest';
import { biweight, deviationOfDistances, median, medianDeviation, quantile } from '#base/fit/robust.ts';
import { smoothSequences } from '#base/fit/smooth.ts';
import { strongestWaves } from '#base/fit/spectrum.ts';
import { normal, seededRandom } from '#base/random.ts';

describe('robust measures', () => {
  it('agrees with the functions median and mad of R on a sample with an outlier', () => {
    const sample = [9, 18, 11, 14, 15, 17, 10, 69, 11, 13];
    expect(median(sample)).toBe(13.5);
    expect(medianDeviation(sample)).toBeCloseTo(4.4478, 10);
  });

  it('places quantiles as R does by default (type 7 of Hyndman & Fan 1996)', () => {
    expect(quantile([1, 2, 3, 4], 0.25)).toBe(1.75);
    expect(quantile([7], 0.9)).toBe(7);
    expect(quantile([], 0.5)).toBeNaN();
  });

  it('reads the jitter from distances in spite of outliers', () => {
    const random = seededRandom(9);
    const distances = Array.from({ length: 4000 }, (_, k) =>
      k % 20 === 0 ? 9 : Math.hypot(0.2 * normal(random), 0.2 * normal(random)),
    );
    expect(deviationOfDistances(distances)).toBeGreaterThan(0.19);
    expect(deviationOfDistances(distances)).toBeLessThan(0.22);
  });

  it('weighs by the biweight', () => {
    expect(biweight(0, 2)).toBe(1);
    expect(biweight(2, 2)).toBe(0);
    expect(biweight(1, 2)).toBeCloseTo(0.5625, 12);
  });
});

describe('smoothing', () => {
  const line = Float64Array.from({ length: 12 }, (_, k) => 3 + 2 * k);

  it('leaves what it tends to as it is, fills gaps, and then keeps that many degrees of freedom', () => {
    const weights = new Float64Array(12).fill(1);
    weights[5] = 0;
    const gapped = line.map((value, k) => (k === 5 ? -99 : value));
    const { fits, freedom } = smoothSequences([gapped], weights, 2, 1e9);
    expect(fits[0]![5]).toBeCloseTo(13, 4);
    expect(freedom).toBeCloseTo(2, 4);
  });

  it('keeps all freedom where it hardly smooths, and its trace is that of the dense smoother', () => {
    const weights = new Float64Array(12).fill(1);
    expect(smoothSequences([line], weights, 3, 1e-9).freedom).toBeCloseTo(12, 6);
    // The trace by unit impulses: what each place keeps of its own value.
    let trace = 0;
    for (let k = 0; k < 12; k++) {
      const impulse = new Float64Array(12);
      impulse[k] = 1;
      trace += smoothSequences([impulse], weights, 3, 4).fits[0]![k]!;
    }
    expect(smoothSequences([line], weights, 3, 4).freedom).toBeCloseTo(trace, 9);
  });
});

describe('waves', () => {
  it("finds a lattice's reciprocal vectors through jitter and holes", () => {
    const random = seededRandom(4);
    const xs: number[] = [];
    const ys: number[] = [];
    for (let i = -6; i <= 6; i++) {
      for (let j = -6; j <= 6; j++) {
        if (random() < 0.3) continue;
        xs.push(2 * i + 0.25 * normal(random));
        ys.push(2.6 * j + 0.25 * normal(random));
      }
    }
    const waves = strongestWaves(Float64Array.from(xs), Float64Array.from(ys), 1, 4.5, 2);
    const sizes = waves.map(({ kx, ky }) => Math.hypot(kx, ky)).sort((p, q) => p - q);
    expect(sizes[0]).toBeCloseTo((2 * Math.PI) / 2.6, 1);
    expect(sizes[1]).toBeCloseTo((2 * Math.PI) / 2, 1);
  });
});
