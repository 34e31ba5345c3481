import type { PixelPoint, Point } from '../geometry/point.ts';
import {
  applyHomography,
  composeHomographies,
  type Frame,
  fitHomography,
  frameOf,
  type Homography,
  into,
  invertHomography,
  outOf,
} from './homography.ts';
import { biweight, deviationOfDistances } from './robust.ts';
import { solveDense } from './solve.ts';

/**
 * How a flat sheet in mm is seen in a picture: in perspective, and through a lens that bends straight lines a little.
 * With `q` the place that the homography gives and `r` its distance from `centre` in units of `radius`, the pixel is
 * `centre + (q - centre) (1 + k1 r^2)` (the first term of D. C. Brown, Photogrammetric Engineering 37 (1971)).
 */
export interface Camera {
  readonly homography: Homography;
  readonly k1: number;
  readonly centre: PixelPoint;
  readonly radius: number;
}

/** Where a place of the sheet is seen. */
export function toPixel({ homography, k1, centre, radius }: Camera, place: Point): PixelPoint {
  const { x, y } = applyHomography(homography, place);
  const u = (x - centre.column) / radius;
  const v = (y - centre.row) / radius;
  const swell = radius * (1 + k1 * (u * u + v * v));
  return { column: centre.column + u * swell, row: centre.row + v * swell };
}

/** A camera read the other way: from pixels to the place on the sheet that is seen there. */
export function fromPixel({ homography, k1, centre, radius }: Camera): (pixel: PixelPoint) => Point {
  const inverse = invertHomography(homography);
  return ({ column, row }) => {
    const bentU = (column - centre.column) / radius;
    const bentV = (row - centre.row) / radius;
    let [u, v] = [bentU, bentV];
    // the bend is slight, so that this shrinks the error a hundredfold a round
    for (let round = 0; round < 8; round++) {
      const swell = 1 + k1 * (u * u + v * v);
      u = bentU / swell;
      v = bentV / swell;
    }
    return applyHomography(inverse, { x: centre.column + u * radius, y: centre.row + v * radius });
  };
}

/** How a step on the sheet is seen about a place: columns and rows a millimetre, `[dc/dx, dc/dy, dr/dx, dr/dy]`. */
export function stretchAt(camera: Camera, { x, y }: Point): readonly [number, number, number, number] {
  const step = 0.01;
  const [east, west] = [toPixel(camera, { x: x + step, y }), toPixel(camera, { x: x - step, y })];
  const [south, north] = [toPixel(camera, { x, y: y + step }), toPixel(camera, { x, y: y - step })];
  return [
    (east.column - west.column) / (2 * step),
    (south.column - north.column) / (2 * step),
    (east.row - west.row) / (2 * step),
    (south.row - north.row) / (2 * step),
  ];
}

export interface CameraFit {
  readonly camera: Camera;
  /** Standard deviation per coordinate of the places about the fit, pixels, not upset by a minority that strays. */
  readonly sigma: number;
}

/** Lenses bend less than this, so that few or crowded places cannot feign a strong bend. */
const USUAL_BEND = 0.02;

/**
 * Fits a camera to places on the sheet and where they are seen, by Gauss and Newton's method with Tukey's weights, so
 * that a group of places that stray does not pull it. The bend is found about the picture's middle, in units of half its
 * diagonal. Null where the places are fewer than four or leave the homography undetermined.
 */
export function fitCamera(
  places: readonly Point[],
  seen: readonly PixelPoint[],
  picture: { readonly width: number; readonly height: number },
): CameraFit | null {
  const centre = { column: (picture.width - 1) / 2, row: (picture.height - 1) / 2 };
  const radius = Math.hypot(picture.width, picture.height) / 2;
  const target: Frame = { x: centre.column, y: centre.row, size: radius };
  const start = fitHomography(
    places,
    seen.map(({ column, row }) => ({ x: column, y: row })),
  );
  if (start === null) return null;
  const source = frameOf(places);
  const inner = places.map((place) => applyHomography(into(source), place));
  const goal = seen.map(({ column, row }) => ({
    x: (column - centre.column) / radius,
    y: (row - centre.row) / radius,
  }));
  const values = Float64Array.from([
    ...composeHomographies(into(target), composeHomographies(start, outOf(source))).slice(0, 8),
    0,
  ]);
  const distances = new Float64Array(places.length);
  let sigma = 0;
  for (let round = 0; round < ROUNDS; round++) {
    measure(values, inner, goal, distances);
    sigma = Math.max(1e-9, deviationOfDistances(distances));
    if (!step(values, inner, goal, distances, sigma)) break;
  }
  measure(values, inner, goal, distances);
  const core = [...values.subarray(0, 8), 1] as unknown as Homography;
  return {
    camera: {
      homography: composeHomographies(outOf(target), composeHomographies(core, into(source))),
      k1: values[8]!,
      centre,
      radius,
    },
    sigma: deviationOfDistances(distances) * radius,
  };
}

const ROUNDS = 12;

/** Tukey's constant for 95 % efficiency with normal noise, for distances in the plane a little more. */
const REACH = 5;

function measure(
  h: Float64Array,
  places: readonly Point[],
  goal: readonly Point[],
  distances: Float64Array,
): void {
  for (let k = 0; k < places.length; k++) {
    const { x, y } = places[k]!;
    const w = h[6]! * x + h[7]! * y + 1;
    const u = (h[0]! * x + h[1]! * y + h[2]!) / w;
    const v = (h[3]! * x + h[4]! * y + h[5]!) / w;
    const swell = 1 + h[8]! * (u * u + v * v);
    distances[k] = Math.hypot(u * swell - goal[k]!.x, v * swell - goal[k]!.y);
  }
}

/** One weighted step; false once it is too small to matter, or cannot be made. */
function step(
  h: Float64Array,
  places: readonly Point[],
  goal: readonly Point[],
  distances: Float64Array,
  sigma: number,
): boolean {
  const matrix = new Float64Array(81);
  const right = new Float64Array(9);
  const across = new Float64Array(9);
  const down = new Float64Array(9);
  for (let k = 0; k < places.length; k++) {
    const weight = biweight(distances[k]!, REACH * sigma);
    if (weight === 0) continue;
    const { x, y } = places[k]!;
    const w = h[6]! * x + h[7]! * y + 1;
    const u = (h[0]! * x + h[1]! * y + h[2]!) / w;
    const v = (h[3]! * x + h[4]! * y + h[5]!) / w;
    const square = u * u + v * v;
    const swell = 1 + h[8]! * square;
    const [uu, uv, vv] = [swell + 2 * h[8]! * u * u, 2 * h[8]! * u * v, swell + 2 * h[8]! * v * v];
    for (let j = 0; j < 3; j++) {
      const source = (j === 0 ? x : j === 1 ? y : 1) / w;
      across[j] = uu * source;
      down[j] = uv * source;
      across[3 + j] = uv * source;
      down[3 + j] = vv * source;
      if (j === 2) continue;
      across[6 + j] = -source * (uu * u + uv * v);
      down[6 + j] = -source * (uv * u + vv * v);
    }
    across[8] = u * square;
    down[8] = v * square;
    const [dx, dy] = [goal[k]!.x - u * swell, goal[k]!.y - v * swell];
    for (let i = 0; i < 9; i++) {
      right[i]! += weight * (across[i]! * dx + down[i]! * dy);
      for (let j = 0; j <= i; j++)
        matrix[9 * i + j]! += weight * (across[i]! * across[j]! + down[i]! * down[j]!);
    }
  }
  for (let i = 0; i < 9; i++) for (let j = i + 1; j < 9; j++) matrix[9 * i + j] = matrix[9 * j + i]!;
  const prior = (sigma / USUAL_BEND) ** 2;
  matrix[80]! += prior;
  right[8]! -= prior * h[8]!;
  const change = solveDense(matrix, right);
  if (change === null) return false;
  let most = 0;
  for (let i = 0; i < 9; i++) {
    h[i]! += change[i]!;
    most = Math.max(most, Math.abs(change[i]!));
  }
  return most > 1e-10;
}
