import { expect, test } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { normal, seededRandom } from '#base/random.ts';
import { placeInLine } from '../../src/bench/stages/pins/in-line.ts';

const settle = (at: Point, pins: readonly Point[], reach = 1, except: number | null = null) =>
  placeInLine(at, reach, pins, new PointIndex(pins), except);

/** A net at 45 degrees, 5 mm along the footside, pricked with an unsteady hand. */
function net(shake: number): Point[] {
  const random = seededRandom(8);
  return Array.from({ length: 144 }, (_, at) => {
    const [column, row] = [at % 12, Math.floor(at / 12)];
    return {
      x: 5 * column + 2.5 * (row % 2) + shake * normal(random),
      y: 2.5 * row + shake * normal(random),
    };
  });
}

test('a pin that is missing in a net falls into its gap', () => {
  const pins = net(0.05);
  for (const gone of [40, 65, 78, 91]) {
    const place = pins[gone]!;
    const rest = pins.filter((_, at) => at !== gone);
    const settled = settle({ x: place.x + 0.5, y: place.y - 0.4 }, rest);
    expect(distance(settled!, place)).toBeLessThan(0.2);
  }
});

test('a net is carried on at its edge', () => {
  const settled = settle({ x: 30.4, y: 29.6 }, net(0));
  expect(distance(settled!, { x: 30, y: 30 })).toBeLessThan(0.01);
});

test('a pin that is moved does not count itself among its neighbours', () => {
  const pins = net(0).map((pin, at) => (at === 65 ? { x: pin.x + 0.8, y: pin.y } : pin));
  const settled = settle({ x: pins[65]!.x - 0.5, y: pins[65]!.y + 0.2 }, pins, 1, 65);
  expect(distance(settled!, net(0)[65]!)).toBeLessThan(0.01);
});

test('nothing draws where nothing is meant: far from a line, on a pin, among few or scattered pins', () => {
  const pins = net(0);
  expect(settle({ x: 31.4, y: 13.9 }, pins, 0.6)).toBeNull();
  expect(settle({ x: 30.2, y: 20.1 }, pins, 0.6)).toBeNull();
  expect(settle({ x: 1, y: 1 }, [])).toBeNull();
  expect(settle({ x: 1, y: 1 }, [{ x: 0, y: 0 }])).toBeNull();
  const random = seededRandom(21);
  const scattered = Array.from({ length: 300 }, () => ({ x: 100 * random(), y: 100 * random() }));
  const drawn = Array.from({ length: 200 }, () =>
    settle({ x: 100 * random(), y: 100 * random() }, scattered, 0.5),
  );
  expect(drawn.filter((one) => one !== null).length).toBeLessThan(30);
});
