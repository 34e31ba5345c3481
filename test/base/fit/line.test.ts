import { describe, expect, it } from 'vitest';
import { fitWeightedLine, regress } from '#base/fit/line.ts';
import { fitStraight, offLine } from '#base/fit/straight.ts';
import { norris } from './norris.ts';

/** Pearson's ten points, with York's weights (D. York, Canadian Journal of Physics 44 (1966)). */
const xs = [0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4];
const ys = [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5];
const pearson = xs.map((x, k) => ({ x, y: ys[k]! }));
const weightsX = [1000, 1000, 500, 800, 200, 80, 60, 20, 1.8, 1];
const weightsY = [1, 1.8, 4, 8, 20, 20, 70, 70, 100, 500];

describe('straight lines', () => {
  it('regresses to the certified values of the NIST StRD data set Norris', () => {
    const { slope, intercept, squares } = regress(norris)!;
    expect(slope).toBeCloseTo(1.00211681802045, 12);
    expect(intercept).toBeCloseTo(-0.262323073774029, 10);
    expect(Math.sqrt(squares / (norris.length - 2))).toBeCloseTo(0.884796396144373, 10);
  });

  it('finds the line of least distances of Pearson, Philosophical Magazine 2 (1901)', () => {
    // Pearson printed 5.784 and -0.5456; the further digits are those of scipy.odr and R's prcomp.
    const line = fitStraight(pearson);
    const { through, direction } = line;
    const squares = pearson.reduce((sum, point) => sum + offLine(line, point) ** 2, 0);
    const slope = direction.y / direction.x;
    expect(slope).toBeCloseTo(-0.545561197521, 11);
    expect(through.y - slope * through.x).toBeCloseTo(5.78404377453, 10);
    expect(squares).toBeCloseTo(0.618572759437, 11);
  });

  it('finds the weighted line of York (1966), printed by Reed, Am. J. Phys. 57 (1989)', () => {
    const { slope, intercept, squares } = fitWeightedLine(pearson, weightsX, weightsY)!;
    expect(slope).toBeCloseTo(-0.480533407446, 10);
    expect(intercept).toBeCloseTo(5.47991022403, 9);
    expect(squares).toBeCloseTo(11.8663531941, 8);
  });

  it('says no where there is no line', () => {
    expect(
      regress([
        { x: 2, y: 1 },
        { x: 2, y: 5 },
      ]),
    ).toBeNull();
  });
});
