import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compactDensity,
  diametersOf,
  diametersOfWraps,
  roundDiameter,
  texOfWraps,
  wrapsPerCmOf,
} from '#base/units/yarn/diameter.ts';
import { fibreDensity, fibres } from '#base/units/yarn/fibre.ts';
import { parseYarn } from '#base/units/yarn/parse.ts';
import { texOfCount } from '#base/units/yarn/system.ts';

const ne = (count: number): number => texOfCount({ system: 'Ne', count });

function tex(label: string): number {
  const yarn = parseYarn(label);
  if (!yarn.ok) throw new Error(label);
  return yarn.value.tex;
}

describe('a round thread', () => {
  test('a tex of 1 at 1 g/cm3 is sqrt(4 / (1000 pi)) = 0.03568248232 mm thick', () => {
    expect(roundDiameter(1, 1)).toBeCloseTo(0.035_682_482_32, 11);
  });

  // GATE TF 2008 prints d[cm] = 4.44e-3 sqrt(tex / density), a packing of 0.646; 0.65 and 0.60 give the others.
  test.each([
    [0.646, 4.44e-3, 1e-5],
    [0.65, 4.42587e-3, 1e-8],
    [0.6, 4.60659e-3, 1e-8],
  ])('with a packing of %d', (packing, factor, rounding) => {
    expect(Math.abs(roundDiameter(1, packing) / 10 - factor)).toBeLessThan(rounding);
  });

  test('30 and 15 tex of density 1.54 by that textbook formula: 0.019597 and 0.013857 cm', () => {
    const packing = (0.035_682_482_32 / 0.0444) ** 2;
    expect(roundDiameter(30, 1.54 * packing) / 10).toBeCloseTo(0.019_597, 6);
    expect(roundDiameter(15, 1.54 * packing) / 10).toBeCloseTo(0.013_857, 6);
  });
});

describe('cotton by Peirce, J. Text. Inst. 28 (1937): 1 / (28 sqrt(Ne)) inch', () => {
  test.each([
    [10, 0.286864],
    [20, 0.202843],
    [30, 0.165621],
    [36, 0.15119],
    [60, 0.117112],
    [80, 0.101422],
    [100, 0.0907143],
    [120, 0.0828104],
  ])('Ne %d is %d mm thick', (count, mm) => {
    expect(diametersOf(ne(count), 'cotton').compact).toBeCloseTo(mm, 6);
  });

  test('36s is a 168th of an inch (GATE 2007)', () => {
    expect(25.4 / diametersOf(ne(36), 'cotton').compact).toBeCloseTo(168, 9);
  });

  test('its density is 0.91371, not that of his rounded specific volume 1.1, which lies a quarter of a per cent off', () => {
    expect(compactDensity('cotton')).toBeCloseTo(0.91371, 5);
    const byVolume = roundDiameter(ne(1), 1 / 1.1);
    expect(25.4 / byVolume).toBeCloseTo(27.9291, 4);
    expect(byVolume / diametersOf(ne(1), 'cotton').compact - 1).toBeCloseTo(0.0025, 4);
  });

  test('square cloth of 10s packed full has 51 threads to the inch at a density of 0.91 (GATE)', () => {
    const diameter = roundDiameter(ne(10), 0.91);
    expect(diameter).toBeCloseTo(0.287_448_13, 7);
    // Threads packed full in plain weave stand sqrt(3) diameters apart (Peirce).
    expect(25.4 / (Math.sqrt(3) * diameter)).toBeCloseTo(51.0168, 3);
    expect(Math.round(25.4 / (Math.sqrt(3) * diametersOf(ne(10), 'cotton').compact))).toBe(51);
  });
});

describe('older tables of diameters to the inch', () => {
  // Taylor, Cotton Weaving and Designing, prints 0.95 sqrt(840 Ne) to the half; Peirce's 28 sqrt(Ne) is 1.7 % above it.
  test.each([
    [15, 106.5],
    [26, 140.5],
    [32, 156],
    [50, 195],
    [60, 213],
    [78, 243],
    [200, 390],
  ])('%ds cotton: %d (Taylor)', (count, perInch) => {
    const ours = 25.4 / diametersOf(ne(count), 'cotton').compact;
    expect(ours / perInch - 1).toBeGreaterThan(0.01);
    expect(ours / perInch - 1).toBeLessThan(0.022);
  });

  // Ashenhurst (1884): 0.9 sqrt(yards to the pound), some print 0.92: 52 for 8/2 cotton. Both are looser than Peirce.
  test('8/2 cotton: 52 (Ashenhurst)', () => {
    const ours = 25.4 / diametersOf(tex('8/2 Ne'), 'cotton').compact;
    expect(ours / 52).toBeGreaterThan(1);
    expect(ours / 52).toBeLessThan(28 / (0.9 * Math.sqrt(840)) + 0.01);
  });
});

describe('linen wound on a ruler (textileschool.com, Thread Numbering System)', () => {
  // Two rounded readings of real threads: a tenth either way is as much as they can bear out.
  test.each([
    ['80/2 NeL', 30],
    ['35/2 NeL', 20],
  ])('%s: %d windings in a centimetre', (label, windings) => {
    const { wrapped, compact } = diametersOf(tex(label), 'linen');
    expect(Math.abs(wrapsPerCmOf(wrapped) / windings - 1)).toBeLessThan(0.1);
    // The closest form alone would foretell four tenths too many: that is why there are two diameters.
    expect(wrapsPerCmOf(compact) / windings).toBeGreaterThan(1.3);
    // And back: the windings tell the number, with twice the error.
    expect(Math.abs(texOfWraps(windings, 'linen') / tex(label) - 1)).toBeLessThan(0.2);
  });

  test('one is two thirds as thick as the other: sqrt(35/80) = 66.14 %', () => {
    const ratio =
      diametersOf(tex('80/2 NeL'), 'linen').wrapped / diametersOf(tex('35/2 NeL'), 'linen').wrapped;
    expect(ratio).toBeCloseTo(0.6614, 4);
    expect(Math.round(100 * ratio) - 67).toBeGreaterThanOrEqual(-1);
  });

  test('wraps an inch over 0.7 are the diameters an inch (common practice after Ashenhurst)', () => {
    const { compact, wrapped } = diametersOf(30, 'wool');
    expect(compact / wrapped).toBeCloseTo(0.7, 12);
    expect(diametersOfWraps(30).compact / diametersOfWraps(30).wrapped).toBeCloseTo(0.7, 12);
  });
});

describe('strands twisted together', () => {
  // Smallest circle about n equal circles, as a multiple of one of them ("Circle packing in a circle").
  test.each([
    [2, 2],
    [3, 2.15470054],
    [4, 2.41421356],
    [5, 2.70130162],
    [6, 3],
    [7, 3],
    [8, 3.3048],
    [9, 3.6131],
  ])('%d by weight are thinner than as stiff rods, which need %d times one', (strands, rods) => {
    const one = diametersOf(12, 'linen').compact;
    const all = diametersOf(12 * strands, 'linen').compact;
    expect(all / one).toBeCloseTo(Math.sqrt(strands), 12);
    expect(all / one).toBeLessThan(rods);
  });
});

test('fibre densities at 65 % relative humidity (Morton & Hearle, table 5.1; flax: Handbook of Properties, table 1.1)', () => {
  expect(fibreDensity).toEqual({
    linen: 1.53,
    cotton: 1.52,
    silk: 1.34,
    wool: 1.31,
    viscose: 1.49,
    acetate: 1.32,
    nylon: 1.14,
    polyester: 1.39,
    acrylic: 1.19,
    polypropylene: 0.91,
  });
  // A thread cannot be denser than its fibre, nor mostly air.
  for (const fibre of fibres) {
    const packing = compactDensity(fibre) / fibreDensity[fibre];
    expect(packing).toBeGreaterThan(0.55);
    expect(packing).toBeLessThan(Math.PI / (2 * Math.sqrt(3)));
  }
});

test('wraps and tex are each other backwards, for every fibre (seed 5)', () => {
  fc.assert(
    fc.property(fc.constantFrom(...fibres), fc.double({ min: 0.1, max: 5000, noNaN: true }), (fibre, tex) => {
      const again = texOfWraps(wrapsPerCmOf(diametersOf(tex, fibre).wrapped), fibre);
      expect(Math.abs(again / tex - 1)).toBeLessThan(1e-12);
    }),
    { seed: 5 },
  );
});
