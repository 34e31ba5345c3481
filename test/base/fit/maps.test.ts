import perspectiveTransform from 'perspective-transform';
import { describe, expect, it } from 'vitest';
import { affineFit } from '#base/fit/affine.ts';
import { applyHomography, fitHomography } from '#base/fit/homography.ts';
import { fitSimilarity } from '#base/fit/procrustes.ts';
import { fitMirror } from '#base/fit/symmetry.ts';
import { applyAffine } from '#base/geometry/affine.ts';
import { distance } from '#base/geometry/point.ts';

const pointsOf = (...values: readonly (readonly [number, number])[]) => values.map(([x, y]) => ({ x, y }));

/** Two skulls of the data set `gorf.dat` of I. L. Dryden & K. V. Mardia, Statistical Shape Analysis (Wiley 1998). */
const a = pointsOf([5, 193], [53, -27], [0, 0], [0, 33], [-2, 105], [18, 176], [72, 114], [92, 38]);
const b = pointsOf([51, 191], [55, -31], [0, 0], [0, 33], [25, 106], [56, 171], [98, 105], [99, 15]);

describe('similarities (Dryden & Mardia, gorf.dat; values of procOPA in the R package shapes)', () => {
  it('lays the second skull on the first', () => {
    const { scale, map, squares } = fitSimilarity(b, a)!;
    expect(scale).toBeCloseTo(0.982109312, 8);
    expect(map.a / scale).toBeCloseTo(0.9773402955, 9);
    expect(Math.abs(map.b) / scale).toBeCloseTo(0.2116741524, 9);
    expect(squares).toBeCloseTo(229.0352243, 6);
    expect(Math.sqrt(squares / a.length)).toBeCloseTo(5.350645, 5);
  });

  it('leaves no more with the six freedoms of an affine map than with four', () => {
    const map = affineFit(b, a)!;
    const left = b.reduce((sum, point, k) => sum + distance(applyAffine(map, point), a[k]!) ** 2, 0);
    expect(left).toBeLessThan(fitSimilarity(b, a)!.squares);
  });
});

describe('projective maps', () => {
  const square = pointsOf([0, 0], [1, 0], [1, 1], [0, 1]);
  const image = pointsOf([10, 20], [110, 30], [100, 140], [5, 120]);

  it('solves the unit square in whole numbers over 71 (closed form of P. Heckbert 1989)', () => {
    const h = fitHomography(square, image)!;
    const exact = [6330, -340, 710, 500, 7460, 1420, -7, 3, 71];
    h.forEach((value, k) => {
      expect(value).toBeCloseTo(exact[k]! / 71, 9);
    });
  });

  it('takes the crossing of the diagonals to the crossing of the diagonals', () => {
    const centre = applyHomography(fitHomography(square, image)!, { x: 0.5, y: 0.5 });
    expect(centre.x).toBeCloseTo(1235 / 23, 9);
    expect(centre.y).toBeCloseTo(1800 / 23, 9);
  });

  it('agrees with the npm package perspective-transform', () => {
    const flat = (points: readonly { x: number; y: number }[]) => points.flatMap(({ x, y }) => [x, y]);
    const other = perspectiveTransform(flat(square), flat(image));
    const h = fitHomography(square, image)!;
    for (const point of pointsOf([0.2, 0.3], [0.9, 0.1], [0.4, 0.8])) {
      const [x, y] = other.transform(point.x, point.y);
      const own = applyHomography(h, point);
      expect(own.x).toBeCloseTo(x!, 6);
      expect(own.y).toBeCloseTo(y!, 6);
    }
  });

  it('says no where three of the four corners lie on one line', () => {
    expect(fitHomography(pointsOf([0, 0], [1, 0], [2, 0], [0, 1]), image)).toBeNull();
    expect(fitHomography(square.slice(0, 3), image.slice(0, 3))).toBeNull();
  });
});

describe('mirror lines', () => {
  it('finds the line in which pairs mirror each other', () => {
    const fit = fitMirror([
      [
        { x: 0, y: 0 },
        { x: 4, y: 0 },
      ],
      [
        { x: 1, y: 3 },
        { x: 3, y: 3 },
      ],
      [
        { x: 2, y: 5 },
        { x: 2, y: 5 },
      ],
    ])!;
    expect(fit.through.x).toBeCloseTo(2, 12);
    expect(Math.abs(fit.direction.y)).toBeCloseTo(1, 12);
    expect(fit.squares).toBeCloseTo(0, 12);
    expect(fitMirror([])).toBeNull();
  });
});
