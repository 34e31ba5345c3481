import { describe, expect, test } from 'vitest';
import { type Camera, fitCamera, fromPixel, stretchAt, toPixel } from '#base/fit/camera.ts';
import { composeHomographies, type Homography, invertHomography } from '#base/fit/homography.ts';
import { normal, seededRandom } from '#base/random.ts';

const picture = { width: 2000, height: 1500 };
const camera: Camera = {
  homography: [11.2, -1.4, 300, 0.9, 10.8, 150, 0.0004, -0.0003, 1],
  k1: -0.015,
  centre: { column: 999.5, row: 749.5 },
  radius: 1250,
};
const places = Array.from({ length: 400 }, (_, k) => ({ x: 5 * (k % 20), y: 5 * Math.floor(k / 20) }));

describe('a camera over a flat sheet', () => {
  test('reads back what it shows', () => {
    const read = fromPixel(camera);
    for (const place of places) {
      const { x, y } = read(toPixel(camera, place));
      expect(Math.hypot(x - place.x, y - place.y)).toBeLessThan(1e-6);
    }
  });

  test('is found again exactly from what it shows', () => {
    const fit = fitCamera(
      places,
      places.map((place) => toPixel(camera, place)),
      picture,
    )!;
    expect(fit.camera.k1).toBeCloseTo(camera.k1, 6);
    for (const place of places) expect(gap(fit.camera, place)).toBeLessThan(1e-4);
  });

  test('is not pulled by a group of places that stray together', () => {
    const random = seededRandom(3);
    const seen = places.map((place, k) => {
      const { column, row } = toPixel(camera, place);
      const stray = k < 80 ? 6 : 0;
      return { column: column + stray + 0.4 * normal(random), row: row + 0.4 * normal(random) };
    });
    const fit = fitCamera(places, seen, picture)!;
    const worst = Math.max(...places.map((place) => gap(fit.camera, place)));
    expect(worst).toBeLessThan(0.6);
    expect(fit.sigma).toBeLessThan(0.6);
  });

  test('says no to places on one line', () => {
    const line = places.slice(0, 20);
    expect(
      fitCamera(
        line,
        line.map((place) => toPixel(camera, place)),
        picture,
      ),
    ).toBeNull();
  });

  test('says how steps are seen', () => {
    const at = { x: 40, y: 60 };
    const [a, b, c, d] = stretchAt(camera, at);
    const [from, to] = [toPixel(camera, at), toPixel(camera, { x: 40.1, y: 60.2 })];
    expect(to.column - from.column).toBeCloseTo(0.1 * a + 0.2 * b, 2);
    expect(to.row - from.row).toBeCloseTo(0.1 * c + 0.2 * d, 2);
  });
});

describe('homographies', () => {
  test('an inverse undoes its map, and a flat map has none', () => {
    const both = composeHomographies(camera.homography, invertHomography(camera.homography));
    const identity: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];
    both.forEach((value, k) => {
      expect(value).toBeCloseTo(identity[k]!, 9);
    });
    expect(() => invertHomography([1, 2, 3, 2, 4, 6, 0, 0, 1])).toThrow(RangeError);
  });
});

function gap(found: Camera, place: { x: number; y: number }): number {
  const [a, b] = [toPixel(found, place), toPixel(camera, place)];
  return Math.hypot(a.column - b.column, a.row - b.row);
}
