import { describe, expect, test } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { outlineWithTabs } from '#paper/cut/tabs.ts';
import { type Path, parallelOf, rectangle } from '#paper/drawing/path.ts';

const box = { left: 2, top: 3, right: 82, bottom: 43 };
const points = (path: Path): Point[] => path.flatMap((step) => ('to' in step ? [step.to] : []));
const lengthOf = (path: Path): number =>
  points(path).reduce((sum, to, k, all) => sum + (k ? distance(all[k - 1]!, to) : 0), 0);

describe('tabs in an outline', () => {
  test.each([1, 2, 3, 4, 7, 12])('%d tabs leave that much standing and cut the rest', (count) => {
    const { paths, tabs } = outlineWithTabs(rectangle(box), { count, width: 1.5 }, [], 0);
    expect([tabs, paths.length]).toEqual([count, count]);
    expect(paths.reduce((sum, path) => sum + lengthOf(path), 0)).toBeCloseTo(240 - 1.5 * count, 9);
  });

  test('each ends where the next tab begins, on a straight stretch', () => {
    const { paths } = outlineWithTabs(parallelOf(box, 6), { count: 5, width: 2 }, [], 0);
    paths.forEach((path, k) => {
      const [end, begin] = [points(path).at(-1)!, points(paths[(k + 1) % paths.length]!)[0]!];
      expect(distance(end, begin)).toBeCloseTo(2, 9);
      expect(Math.min(Math.abs(end.x - begin.x), Math.abs(end.y - begin.y))).toBeCloseTo(0, 9);
    });
  });

  test('never across a hole', () => {
    const random = seededRandom(5);
    for (let round = 0; round < 20; round++) {
      const holes = Array.from({ length: 25 }, () => ({ x: 2 + 80 * random(), y: random() < 0.5 ? 3 : 43 }));
      const { paths } = outlineWithTabs(rectangle(box), { count: 6, width: 2 }, holes, 0.5);
      for (let k = 0; k < paths.length; k++) {
        const [end, begin] = [points(paths[k]!).at(-1)!, points(paths[(k + 1) % paths.length]!)[0]!];
        const middle = { x: (end.x + begin.x) / 2, y: (end.y + begin.y) / 2 };
        for (const hole of holes) expect(distance(hole, middle)).toBeGreaterThan(1.5);
      }
    }
  });

  test('where no tab finds a place the outline stays whole', () => {
    const holes = Array.from({ length: 241 }, (_, k) => ({ x: k / 3 + 2, y: 3 })).flatMap(({ x, y }) => [
      { x, y },
      { x, y: 43 },
    ]);
    const sides = Array.from({ length: 81 }, (_, k) => 3 + k / 2).flatMap((y) => [
      { x: 2, y },
      { x: 82, y },
    ]);
    const { paths, tabs } = outlineWithTabs(
      rectangle(box),
      { count: 4, width: 1 },
      [...holes, ...sides],
      0.5,
    );
    expect([paths, tabs]).toEqual([[rectangle(box)], 0]);
  });
});
