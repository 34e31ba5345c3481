import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellArea, fitLattice, latticeNode, latticePlace, shortestSteps } from '#base/fit/lattice.ts';
import { chord, polarNode, refinePolar } from '#base/fit/polar.ts';
import { length } from '#base/geometry/point.ts';
import { normal, seededRandom } from '#base/random.ts';

const square = {
  origin: { x: 0, y: 0 },
  a: { x: Math.SQRT1_2, y: Math.SQRT1_2 },
  b: { x: Math.SQRT1_2, y: -Math.SQRT1_2 },
};

describe('lattices', () => {
  // Gauss's circle problem: nodes of the unit square lattice within a radius (OEIS A000328).
  it.each([
    [1, 5],
    [2, 13],
    [3, 29],
    [4, 49],
    [5, 81],
    [10, 317],
  ])('has as many nodes within radius %d as Gauss counted', (radius, count) => {
    let inside = 0;
    for (let i = -12; i <= 12; i++) {
      for (let j = -12; j <= 12; j++) if (length(latticeNode(square, i, j)) <= radius + 1e-9) inside++;
    }
    expect(inside).toBe(count);
  });

  it("obeys Pick's theorem on any lattice: area = inside + rim / 2 - 1 cells", () => {
    const small = fc.integer({ min: -6, max: 6 });
    fc.assert(
      fc.property(fc.tuple(small, small), fc.tuple(small, small), fc.tuple(small, small), (p, q, r) => {
        const frame = { origin: { x: 3, y: -2 }, a: { x: 2.1, y: 0.4 }, b: { x: -0.7, y: 1.9 } };
        const corners = [p, q, r].map(([i, j]) => latticeNode(frame, i, j)) as [Pt, Pt, Pt];
        const twice = Math.abs(
          (corners[1].x - corners[0].x) * (corners[2].y - corners[0].y) -
            (corners[1].y - corners[0].y) * (corners[2].x - corners[0].x),
        );
        fc.pre(twice > 1e-6);
        const sides = [
          [p, q],
          [q, r],
          [r, p],
        ].map(([s, t]) => gcd(Math.abs(s![0]! - t![0]!), Math.abs(s![1]! - t![1]!)));
        const rim = sides.reduce((sum, side) => sum + side, 0);
        let inside = 0;
        for (let i = -7; i <= 7; i++) {
          for (let j = -7; j <= 7; j++) if (isInside(latticeNode(frame, i, j), corners)) inside++;
        }
        expect(twice / 2 / cellArea(frame)).toBeCloseTo(inside + rim / 2 - 1, 6);
      }),
    );
  });

  it('has cells of |a| |b| sin(angle)', () => {
    expect(cellArea({ a: { x: 3, y: 0 }, b: { x: 2 * Math.cos(1), y: 2 * Math.sin(1) } })).toBeCloseTo(
      6 * Math.sin(1),
      12,
    );
  });

  it('is found again from its own nodes, far from the origin too', () => {
    const frame = { origin: { x: 1e6, y: -2e6 }, a: { x: 2.5, y: 0.3 }, b: { x: -1.1, y: 2.2 } };
    const nodes = [0, 1, 2, 3, 4].flatMap((i) => [0, 1, 2, 3].map((j) => [i, j] as const));
    const fit = fitLattice(
      nodes.map(([i, j]) => latticeNode(frame, i, j)),
      nodes,
    )!;
    expect(fit.rms).toBeLessThan(1e-8);
    expect(fit.a.x).toBeCloseTo(2.5, 8);
    expect(fit.b.y).toBeCloseTo(2.2, 8);
    const { i, j } = latticePlace(fit, latticeNode(frame, 7, -3));
    expect(i).toBeCloseTo(7, 7);
    expect(j).toBeCloseTo(-3, 7);
  });

  it('is not found where all nodes lie on one row', () => {
    expect(
      fitLattice(
        [
          { x: 0, y: 0 },
          { x: 1, y: 0 },
          { x: 2, y: 0 },
        ],
        [
          [0, 0],
          [1, 0],
          [2, 0],
        ],
      ),
    ).toBeNull();
    expect(fitLattice([], [])).toBeNull();
  });

  it('keeps its cell under reduction to the shortest steps', () => {
    const { a, b } = shortestSteps({ x: 5, y: 1 }, { x: 12, y: 3 });
    expect(cellArea({ a, b })).toBeCloseTo(3, 12);
    expect(length(a)).toBeLessThanOrEqual(length(b));
  });
});

describe('polar lattices', () => {
  // 2 R sin(pi / n): the table of chords in Machinery's Handbook gives half of these for a diameter of 1.
  it.each([
    [7, 0.867767],
    [12, 0.517638],
    [60, 0.104672],
    [100, 0.0628215],
  ])('has neighbours of %d on a ring at the tabled chord', (sectors, value) => {
    expect(chord(1, sectors)).toBeCloseTo(value, 6);
    const frame = { centre: { x: 4, y: 5 }, sectors, radii: [1], phases: [0.3] };
    const [p, q] = [polarNode(frame, 0, 2), polarNode(frame, 0, 3)];
    expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeCloseTo(value, 6);
  });

  it('is bettered from jittered pins to well within their jitter', () => {
    const truth = {
      centre: { x: 40, y: 30 },
      sectors: 36,
      radii: [10, 12, 15],
      phases: [0.1, 0.1 + Math.PI / 36, 0.1],
    };
    const random = seededRandom(3);
    const nodes = [0, 1, 2].flatMap((ring) => Array.from({ length: 36 }, (_, m) => [ring, m] as const));
    const points = nodes.map(([ring, m]) => {
      const { x, y } = polarNode(truth, ring, m);
      return { x: x + 0.2 * normal(random), y: y + 0.2 * normal(random) };
    });
    let frame: typeof truth = { ...truth, centre: { x: 40.5, y: 29.6 }, radii: [10.3, 12.2, 14.8] };
    for (let round = 0; round < 6; round++) frame = refinePolar(frame, points, nodes) as typeof truth;
    expect(Math.hypot(frame.centre.x - 40, frame.centre.y - 30)).toBeLessThan(0.06);
    frame.radii.forEach((radius, ring) => {
      expect(Math.abs(radius - truth.radii[ring]!)).toBeLessThan(0.1);
    });
  });
});

type Pt = { x: number; y: number };

const gcd = (p: number, q: number): number => (q === 0 ? p : gcd(q, p % q));

function isInside(point: Pt, corners: readonly [Pt, Pt, Pt]): boolean {
  const sides = corners.map((from, k) => {
    const to = corners[(k + 1) % 3]!;
    return (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
  });
  return sides.every((side) => side > 1e-9) || sides.every((side) => side < -1e-9);
}
