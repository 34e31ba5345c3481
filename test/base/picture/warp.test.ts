import { describe, expect, it } from 'vitest';
import {
  type Affine,
  applyAffine,
  compose,
  invert,
  rotation,
  scaling,
  translation,
} from '#base/geometry/affine.ts';
import { type Box, boxOf, growBox } from '#base/geometry/box.ts';
import type { PixelPoint, Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { type PixelPicture, warp } from '#base/picture/warp.ts';
import { type WarpControl, warpMesh } from '#base/picture/warp-mesh.ts';
import { type Random, seededRandom } from '#base/random.ts';
import { mmPerPixel } from '#base/units/length.ts';
import { edging, fine, round, tape } from '../../support/patterns/index.ts';

const dpi = 300;
const pixel = mmPerPixel(dpi);
/** Pixels to mm where the first pixel's middle lies half a pixel inside the sheet's corner. */
const toSheet: Affine = { a: pixel, b: 0, c: 0, d: pixel, e: pixel / 2, f: pixel / 2 };
const box: Box = { left: 0, top: 0, right: 300 * pixel, bottom: 240 * pixel };

describe('a warped picture', () => {
  it.each([1, 3] as const)('is the picture itself where nothing moved (%d channels)', (channels) => {
    const picture = noise(300, 240, channels, seededRandom(5));
    const controls = grid(4, 0).map((to) => ({ to, from: pixelOf(toSheet, to) }));
    const warped = warp(picture, controls, toSheet, { box, dpi });
    expect([warped.width, warped.height, warped.channels]).toEqual([300, 240, channels]);
    let most = 0;
    for (let k = 0; k < picture.bytes.length; k++)
      most = Math.max(most, Math.abs(picture.bytes[k]! - warped.bytes[k]!));
    expect(most).toBeLessThanOrEqual(1);
  });

  it.each([
    { name: 'an exact grid', turn: 0, by: 0 },
    { name: 'a turned grid', turn: 0.3, by: 0 },
    { name: 'a jittered grid', turn: 0, by: 0.3 },
    { name: 'a turned and jittered grid', turn: 0.7, by: 0.3 },
  ])('shows every control where it belongs, on $name', ({ turn, by }) => {
    const random = seededRandom(17);
    const page = scanOf(turn);
    const controls = grid(3, 2).map((to): WarpControl => {
      const stood = { x: to.x + by * (random() - 0.5), y: to.y + by * (random() - 0.5) };
      return { to, from: pixelOf(page, stood) };
    });
    const picture = withDots(
      420,
      400,
      controls.map(({ from }) => from),
    );
    const warped = warp(picture, controls, page, { box, dpi });
    for (const { to } of controls) {
      const want = pixelOf(toSheet, to);
      const is = centreOfDarkness(warped, want);
      // The triangles that meet at a dot stretch it unlike, which pulls its centre of darkness by up to 0.02 mm.
      expect(Math.hypot(is.column - want.column, is.row - want.row)).toBeLessThan(0.25);
    }
  });

  it('is white where the picture shows nothing', () => {
    const picture: PixelPicture = { width: 40, height: 40, channels: 1, bytes: new Uint8Array(1600) };
    const warped = warp(picture, [], toSheet, { box, dpi });
    expect(warped.bytes[0]).toBe(0);
    expect(warped.bytes[20 * 300 + 20]).toBe(0);
    expect(warped.bytes[100 * 300 + 100]).toBe(255);
    expect(warped.bytes.at(-1)).toBe(255);
  });

  it('keeps thin lines whole where several pixels go into one', () => {
    const fine: Affine = { ...toSheet, a: pixel / 2, d: pixel / 2 };
    const picture: PixelPicture = {
      width: 600,
      height: 480,
      channels: 1,
      bytes: new Uint8Array(600 * 480).fill(255),
    };
    for (let row = 0; row < 480; row++) picture.bytes[row * 600 + 201] = 0;
    const warped = warp(picture, [], fine, { box, dpi });
    for (let row = 5; row < 235; row++) {
      const across = [...warped.bytes.subarray(row * 300 + 95, row * 300 + 106)];
      expect(across.reduce((sum, grey) => sum + 255 - grey, 0)).toBeGreaterThan(100);
    }
  });

  it('says how far it is, and stops when its listener throws', () => {
    const picture = noise(300, 240, 1, seededRandom(1));
    const heard: number[] = [];
    warp(picture, [], toSheet, { box, dpi }, (_, share) => heard.push(share));
    expect(heard.at(-1)).toBe(1);
    expect([...heard].sort((a, b) => a - b)).toEqual(heard);
    const stop = (): void => {
      throw new Error('stopped');
    };
    expect(() => warp(picture, [], toSheet, { box, dpi }, stop)).toThrow('stopped');
  });
});

describe('the net of a warp', () => {
  const patterns = { edging: edging(), fine: fine(), tape: tape(), round: round() };

  it.each(Object.entries(patterns))(
    'does not fold over on %s while neighbours move by less than half their distance',
    (_, known) => {
      const random = seededRandom(23);
      const places = known.ideal;
      const index = new PointIndex(places);
      const controls = places.map((to, k): WarpControl => {
        // Two neighbours that move by up to 0.24 of their distance each move by less than half of it together.
        const reach = 0.24 * index.nearestTo(k, 10);
        const angle = 2 * Math.PI * random();
        const stood = { x: to.x + reach * Math.cos(angle), y: to.y + reach * Math.sin(angle) };
        return { to, from: pixelOf(toSheet, stood) };
      });
      const sheet = growBox(boxOf(places), 10);
      const { places: corners, sources, triangles } = warpMesh(controls, toSheet, sheet);
      let folded = 0;
      for (let k = 0; k < triangles.length; k += 3) {
        const [a, b, c] = [triangles[k]!, triangles[k + 1]!, triangles[k + 2]!];
        const before = turnOf(corners[a]!, corners[b]!, corners[c]!);
        const [p, q, r] = [a, b, c].map((n) => ({ x: sources[n]!.column, y: sources[n]!.row }));
        if (before * turnOf(p!, q!, r!) <= 0) folded++;
      }
      expect(folded).toBe(0);
      expect(corners.slice(0, places.length)).toEqual(places);
      expect(sources.slice(0, places.length)).toEqual(controls.map(({ from }) => from));
    },
  );

  it.each([0, 1, 2, 3])('holds with %d controls', (count) => {
    const controls = grid(20, 2)
      .slice(0, count)
      .map((to): WarpControl => ({ to, from: pixelOf(toSheet, { x: to.x + 0.1, y: to.y }) }));
    const { places, sources } = warpMesh(controls, toSheet, box);
    places.forEach((place, k) => {
      const want = pixelOf(toSheet, { x: place.x + (count > 0 ? 0.1 : 0), y: place.y });
      expect(Math.hypot(sources[k]!.column - want.column, sources[k]!.row - want.row)).toBeLessThan(1e-6);
    });
  });

  it('takes controls that stand on one line, or twice at one place', () => {
    const line = Array.from({ length: 12 }, (_, k): Point => ({ x: 2 + 1.5 * k, y: 8 }));
    for (const places of [line, [...line, ...line]]) {
      const controls = places.map((to): WarpControl => ({ to, from: pixelOf(toSheet, to) }));
      expect(warpMesh(controls, toSheet, box).triangles.length).toBeGreaterThan(0);
    }
  });
});

/** Pixels to mm of a page that lies turned in the scanner. */
const scanOf = (turn: number): Affine =>
  compose(translation(12.7, 10.2), compose(rotation(turn), compose(scaling(pixel), translation(-210, -200))));

function pixelOf(map: Affine, point: Point): PixelPoint {
  const { x, y } = applyAffine(invert(map), point);
  return { column: x, row: y };
}

function grid(step: number, margin: number): Point[] {
  const places: Point[] = [];
  for (let y = box.top + margin; y <= box.bottom - margin; y += step) {
    for (let x = box.left + margin; x <= box.right - margin; x += step) places.push({ x, y });
  }
  return places;
}

function noise(width: number, height: number, channels: 1 | 3, random: Random): PixelPicture {
  const bytes = Uint8Array.from({ length: width * height * channels }, () => 256 * random());
  return { width, height, channels, bytes };
}

function withDots(width: number, height: number, dots: readonly PixelPoint[]): PixelPicture {
  const bytes = new Uint8Array(width * height).fill(255);
  for (const { column, row } of dots) {
    for (let y = Math.floor(row) - 6; y <= row + 6; y++) {
      for (let x = Math.floor(column) - 6; x <= column + 6; x++) {
        if (x < 0 || y < 0 || x >= width || y >= height) continue;
        bytes[y * width + x] = 255 * Math.min(1, Math.max(0, Math.hypot(x - column, y - row) - 1.5));
      }
    }
  }
  return { width, height, channels: 1, bytes };
}

function centreOfDarkness({ bytes, width }: PixelPicture, near: PixelPoint): PixelPoint {
  let [sum, column, row] = [0, 0, 0];
  for (let y = Math.round(near.row) - 7; y <= near.row + 7; y++) {
    for (let x = Math.round(near.column) - 7; x <= near.column + 7; x++) {
      const dark = 255 - bytes[y * width + x]!;
      sum += dark;
      column += dark * x;
      row += dark * y;
    }
  }
  return { column: column / sum, row: row / sum };
}

const turnOf = (a: Point, b: Point, c: Point): number =>
  (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
