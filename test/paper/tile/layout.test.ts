import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAffine } from '#base/geometry/affine.ts';
import { type Box, boxHolds, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { CROSS_SIZE, crossesOn, registrationCrosses } from '#paper/tile/crosses.ts';
import { tileName, tilesNeeded } from '#paper/tile/grid.ts';
import { layOut } from '#paper/tile/layout.ts';
import { placeSeam, SEAM_CLEARANCE } from '#paper/tile/seam.ts';
import { paper } from '../support/print.ts';

/** A plain room: 20 mm from every edge. */
const roomOn = ({ width, height }: { width: number; height: number }): Box => ({
  left: 20,
  top: 20,
  right: width - 20,
  bottom: height - 20,
});

const size = fc.double({ min: 1, max: 2000, noNaN: true });
const overlaps = fc.double({ min: 5, max: 50, noNaN: true });

const content = (width: number, height: number): Box => ({
  left: -7,
  top: 3,
  right: width - 7,
  bottom: height + 3,
});

const scattered = ({ left, top, right, bottom }: Box, count: number): Point[] => {
  const random = seededRandom(count);
  return Array.from({ length: count }, () => ({
    x: left + random() * (right - left),
    y: top + random() * (bottom - top),
  }));
};

describe('how many tiles', () => {
  test('a pattern exactly n tiles long takes n', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.double({ min: 60, max: 400, noNaN: true }),
        overlaps,
        (n, window, overlap) => {
          expect(tilesNeeded(n * window - (n - 1) * overlap, window, overlap)).toBe(n);
          expect(tilesNeeded(n * window - (n - 1) * overlap + 0.01, window, overlap)).toBe(n + 1);
        },
      ),
    );
  });

  test('names count through the alphabet and beyond', () => {
    expect([tileName(0, 0), tileName(1, 2), tileName(25, 9), tileName(26, 0)]).toEqual([
      'A1',
      'B3',
      'Z10',
      'AA1',
    ]);
  });
});

describe('tiles', () => {
  const laid = (width: number, height: number, overlap = 15, count = 60) => {
    const box = content(width, height);
    const holes = scattered(box, count);
    return { box, holes, layout: layOut(box, holes, paper('A4'), overlap, roomOn) };
  };

  test('every hole lies whole on a sheet, and in an overlap on both', () => {
    fc.assert(
      fc.property(size, size, overlaps, (width, height, overlap) => {
        const { holes, layout } = laid(width, height, overlap);
        for (const hole of holes) {
          const on = layout.tiles.filter(({ window }) => boxHolds(growBox(window, 1e-6), hole));
          expect(on.length).toBeGreaterThanOrEqual(1);
          // Whole: at least one sheet shows 2 mm round it as well, unless it lies at the pattern's own edge.
          const whole = on.some(({ window }) => boxHolds(growBox(window, -2), hole));
          const inner = boxHolds(growBox(content(width, height), -2), hole);
          expect(whole || !inner).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('all sheets share paper and way, and both ways need no fewer sheets', () => {
    fc.assert(
      fc.property(size, size, (width, height) => {
        const { layout } = laid(width, height);
        const chosen = layout.tiles.length;
        const turnedPaper = { ...paper('A4'), width: 297, height: 210 };
        const other = layOut(content(width, height), [], turnedPaper, 15, roomOn);
        expect(chosen).toBe(other.tiles.length);
        expect(new Set(layout.tiles.map(({ area }) => JSON.stringify(area))).size).toBe(1);
      }),
      { numRuns: 60 },
    );
  });

  test('neighbours overlap by what was asked, in the pattern and on the paper', () => {
    const { layout } = laid(500, 700, 15);
    for (const tile of layout.tiles) {
      const right = layout.tiles.find(({ row, column }) => row === tile.row && column === tile.column + 1);
      if (right) expect(tile.window.right - right.window.left).toBeCloseTo(15, 9);
      const below = layout.tiles.find(({ row, column }) => row === tile.row + 1 && column === tile.column);
      if (below) expect(tile.window.bottom - below.window.top).toBeCloseTo(15, 9);
      const corner = applyAffine(tile.toPaper, { x: tile.window.left, y: tile.window.top });
      expect(corner.x).toBeCloseTo(tile.area.left, 9);
      expect(corner.y).toBeCloseTo(tile.area.top, 9);
    }
  });

  test('each seam has two crosses at the same place of the pattern on both sheets', () => {
    fc.assert(
      fc.property(size, size, overlaps, (width, height, overlap) => {
        const { layout } = laid(width, height, overlap);
        const crosses = registrationCrosses(layout);
        for (const tile of layout.tiles) {
          for (const [dr, dc] of [
            [0, 1],
            [1, 0],
          ] as const) {
            const next = layout.tiles.find(
              ({ row, column }) => row === tile.row + dr && column === tile.column + dc,
            );
            if (!next) continue;
            const both = crossesOn(tile, crosses).filter((cross) => crossesOn(next, crosses).includes(cross));
            expect(both.length).toBeGreaterThanOrEqual(2);
            for (const { at } of both) {
              // Back from both papers to the pattern: the same within 0.001 mm; arms inside the paper's safe part.
              const [a, b] = [tile, next].map(({ toPaper }) => applyAffine(toPaper, at)) as [Point, Point];
              expect(a.x - tile.toPaper.e - (b.x - next.toPaper.e)).toBeCloseTo(0, 6);
              expect(a.y - tile.toPaper.f - (b.y - next.toPaper.f)).toBeCloseTo(0, 6);
              const room = growBox(roomOn(layout.paper), -CROSS_SIZE / 2 + 0.001);
              expect(boxHolds(room, a) && boxHolds(room, b)).toBe(true);
            }
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test('the same pattern is laid out alike every time', () => {
    expect(laid(800, 433)).toEqual(laid(800, 433));
  });
});

describe('a seam', () => {
  test('keeps 2 mm from holes where the overlap has such a place', () => {
    const positions = [100, 104.2, 106, 107, 111];
    const { at, clearance } = placeSeam(98, 113, positions);
    expect(clearance).toBeGreaterThanOrEqual(SEAM_CLEARANCE - 1e-6);
    for (const hole of positions) expect(Math.abs(hole - at)).toBeGreaterThanOrEqual(SEAM_CLEARANCE - 1e-6);
  });

  test('else keeps as far as it can', () => {
    const everyTwo = Array.from({ length: 20 }, (_, k) => 95 + 2 * k);
    const { at, clearance } = placeSeam(98, 113, everyTwo);
    expect(clearance).toBeCloseTo(1, 6);
    expect(at).toBeGreaterThan(98);
    expect(at).toBeLessThan(113);
  });

  test('lies in the middle where no hole is near', () => {
    expect(placeSeam(98, 113, []).at).toBe(105.5);
  });

  test('holes that it cannot avoid are listed', () => {
    const box = content(500, 100);
    const everywhere = Array.from({ length: 500 }, (_, k) => ({ x: k - 7, y: 50 }));
    const layout = layOut(box, everywhere, paper('A4'), 15, roomOn);
    expect(layout.cuts.across.length).toBeGreaterThan(0);
    expect(layout.nearCuts.length).toBeGreaterThanOrEqual(layout.cuts.across.length * 3);
    for (const k of layout.nearCuts) {
      const far = Math.min(...layout.cuts.across.map((cut) => Math.abs(cut - everywhere[k]!.x)));
      expect(far).toBeLessThan(SEAM_CLEARANCE);
    }
  });
});
