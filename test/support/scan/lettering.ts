import { createRequire } from 'node:module';
import { Resvg } from '@resvg/resvg-js';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { Layer } from './layer.ts';

const find = createRequire(import.meta.url).resolve;
const fontFiles = [
  '400Regular/SourceSans3_400Regular.ttf',
  '400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
].map((name) => find(`@expo-google-fonts/source-sans-3/${name}`));

/** Writes one line of text on a layer: its baseline starts at `at` and runs along `angle` radians. */
export function write(
  layer: Layer,
  text: string,
  at: PixelPoint,
  height: number,
  angle: number,
  options: { italic?: boolean; strength?: number } = {},
): void {
  const half = Math.ceil(height * (0.6 * text.length + 2));
  const font = `font-family="Source Sans 3" font-size="${height}" font-style="${options.italic ? 'italic' : 'normal'}"`;
  // The fraction of a pixel stays in the drawing, so that letters do not snap to the grid of pixels.
  const column = Math.floor(at.column);
  const row = Math.floor(at.row);
  const turn = `translate(${half + at.column - column} ${half + at.row - row}) rotate(${(angle * 180) / Math.PI})`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${2 * half}" height="${2 * half}"><text ${font} transform="${turn}">${text}</text></svg>`;
  const { pixels } = new Resvg(svg, { font: { fontFiles, loadSystemFonts: false } }).render();
  const strength = options.strength ?? 1;
  for (let y = 0; y < 2 * half; y++) {
    const to = row + y - half;
    if (to < 0 || to >= layer.height) continue;
    for (let x = 0; x < 2 * half; x++) {
      const ink = (strength * pixels[4 * (y * 2 * half + x) + 3]!) / 255;
      const target = column + x - half;
      if (ink === 0 || target < 0 || target >= layer.width) continue;
      const index = to * layer.width + target;
      if (ink > layer.cover[index]!) layer.cover[index] = ink;
    }
  }
}
