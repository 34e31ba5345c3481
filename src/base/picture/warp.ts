import type { Affine } from '../geometry/affine.ts';
import type { Box } from '../geometry/box.ts';
import type { PixelPoint } from '../geometry/point.ts';
import { type Progress, silent } from '../progress.ts';
import { mmPerPixel } from '../units/length.ts';
import { type WarpControl, warpMesh } from './warp-mesh.ts';

/** Pixels row after row from the top, `channels` bytes each: 1 grey, 3 red, green and blue. */
export interface PixelPicture {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  readonly bytes: Uint8Array;
}

export interface WarpFrame {
  /** The part of the sheet that the new picture shows, mm. */
  readonly box: Box;
  readonly dpi: number;
}

/**
 * The picture as it would look if every control had always stood where it now belongs: its markings go with the pins.
 * The first pixel's middle lies half a pixel inside the frame's top left corner. What the picture does not show is white.
 * See `warpMesh` for the map between the controls.
 */
export function warp(
  picture: PixelPicture,
  controls: readonly WarpControl[],
  toSheet: Affine,
  frame: WarpFrame,
  progress: Progress = silent,
): PixelPicture {
  const { box, dpi } = frame;
  const pixel = mmPerPixel(dpi);
  const width = Math.max(1, Math.round((box.right - box.left) / pixel));
  const height = Math.max(1, Math.round((box.bottom - box.top) / pixel));
  const { channels } = picture;
  const bytes = new Uint8Array(width * height * channels).fill(255);
  const mesh = warpMesh(controls, toSheet, box);
  const corners = mesh.places.map(
    ({ x, y }): PixelPoint => ({ column: (x - box.left) / pixel - 0.5, row: (y - box.top) / pixel - 0.5 }),
  );
  const count = mesh.triangles.length / 3;
  for (let triangle = 0; triangle < count; triangle++) {
    if (triangle % 256 === 0) progress('warp', triangle / count);
    const [i, j, k] = mesh.triangles.subarray(3 * triangle, 3 * triangle + 3) as unknown as [
      number,
      number,
      number,
    ];
    const target = [corners[i]!, corners[j]!, corners[k]!] as const;
    const source = [mesh.sources[i]!, mesh.sources[j]!, mesh.sources[k]!] as const;
    drawTriangle(picture, target, source, { width, height, channels, bytes });
  }
  progress('warp', 1);
  return { width, height, channels, bytes };
}

type Corners = readonly [PixelPoint, PixelPoint, PixelPoint];

function drawTriangle(picture: PixelPicture, target: Corners, source: Corners, out: PixelPicture): void {
  const [a, b, c] = target;
  const area = (b.column - a.column) * (c.row - a.row) - (c.column - a.column) * (b.row - a.row);
  if (area === 0) return;
  const slope = (p: number, q: number, r: number): { x: number; y: number } => ({
    x: ((q - p) * (c.row - a.row) - (r - p) * (b.row - a.row)) / area,
    y: ((r - p) * (b.column - a.column) - (q - p) * (c.column - a.column)) / area,
  });
  const columns = slope(source[0].column, source[1].column, source[2].column);
  const rows = slope(source[0].row, source[1].row, source[2].row);
  // Where several pixels of the picture go into one, each is asked in turn, so that thin lines do not break up.
  const finer = Math.min(
    4,
    Math.max(1, Math.round(Math.sqrt(Math.abs(columns.x * rows.y - columns.y * rows.x)))),
  );
  const first = Math.max(0, Math.ceil(Math.min(a.row, b.row, c.row)));
  const last = Math.min(out.height - 1, Math.ceil(Math.max(a.row, b.row, c.row)) - 1);
  const sum = new Float64Array(out.channels);
  for (let row = first; row <= last; row++) {
    const [left, right] = spanAt(target, row);
    const end = Math.min(out.width - 1, Math.ceil(right) - 1);
    for (let column = Math.max(0, Math.ceil(left)); column <= end; column++) {
      sum.fill(0);
      for (let n = 0; n < finer * finer; n++) {
        const x = column - a.column + ((n % finer) + 0.5) / finer - 0.5;
        const y = row - a.row + (Math.floor(n / finer) + 0.5) / finer - 0.5;
        const from = source[0].column + columns.x * x + columns.y * y;
        addSample(picture, from, source[0].row + rows.x * x + rows.y * y, sum);
      }
      const at = (row * out.width + column) * out.channels;
      for (let channel = 0; channel < out.channels; channel++) {
        out.bytes[at + channel] = sum[channel]! / (finer * finer) + 0.5;
      }
    }
  }
}

/** Where a row enters and leaves a triangle. Neighbours share an edge's numbers exactly, so no pixel is left out. */
function spanAt(corners: Corners, row: number): [number, number] {
  let [left, right] = [Infinity, -Infinity];
  for (let k = 0; k < 3; k++) {
    const [p, q] = [corners[k]!, corners[(k + 1) % 3]!];
    const [top, bottom] = p.row < q.row ? [p, q] : [q, p];
    if (row < top.row || row > bottom.row || top.row === bottom.row) continue;
    const x = top.column + ((row - top.row) / (bottom.row - top.row)) * (bottom.column - top.column);
    if (x < left) left = x;
    if (x > right) right = x;
  }
  return [left, right];
}

/** Adds what lies between the four pixels round a place; white outside the picture. */
function addSample(picture: PixelPicture, column: number, row: number, sum: Float64Array): void {
  const { width, height, channels, bytes } = picture;
  const left = Math.floor(column);
  const top = Math.floor(row);
  if (left < -1 || top < -1 || left >= width || top >= height) {
    for (let channel = 0; channel < channels; channel++) sum[channel]! += 255;
    return;
  }
  const u = column - left;
  const v = row - top;
  // The picture's edge goes on for one pixel, so that a frame as large as the picture has no pale rim.
  const x0 = Math.max(0, left) * channels;
  const x1 = Math.min(width - 1, left + 1) * channels;
  const y0 = Math.max(0, top) * width * channels;
  const y1 = Math.min(height - 1, top + 1) * width * channels;
  for (let channel = 0; channel < channels; channel++) {
    const upper = bytes[y0 + x0 + channel]! * (1 - u) + bytes[y0 + x1 + channel]! * u;
    const lower = bytes[y1 + x0 + channel]! * (1 - u) + bytes[y1 + x1 + channel]! * u;
    sum[channel]! += upper + (lower - upper) * v;
  }
}
