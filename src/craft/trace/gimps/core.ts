import { distanceInside } from '#base/picture/distance-inside.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { groundOf } from '#base/picture/ground.ts';

/** The inner part of one thick mark. */
export interface Core {
  readonly pixels: readonly number[];
  /** Half the mark's usual width, pixels. */
  readonly half: number;
}

/** Ink lies deeper than this share of what the darkest ink about is deep. */
const INK = 0.45;
/** Working lines are narrower than this share of a dot; so are gimps where they are worn. */
const THICK = 0.62;
/** Most of a gimp is at least this share of a dot wide. Close working lines that have run together are narrower. */
const WIDE = 0.95;
/** Solid areas, dark edges of a scan and the like are thicker than this many dots. */
const SOLID = 2.4;
/** Letters and knots of lines are shorter than this many dots. */
export const LONG = 9;

/** The parts of a picture that are thicker than working lines, and long. */
export function thickCores(picture: GreyPicture, dot: number): Core[] {
  const { width, height } = picture;
  const far = distanceInside(inkOf(picture), width, height);
  const least = Math.round((3 * THICK * dot) / 2);
  const todo: number[] = [];
  const cores: Core[] = [];
  for (let start = 0; start < far.length; start++) {
    if (far[start]! < least) continue;
    // What was visited is taken off the map, and put down in the core's own list.
    const pixels: number[] = [];
    const depths: number[] = [];
    let [left, right, top, bottom] = [width, 0, height, 0];
    todo.push(start);
    const visit = (at: number): void => {
      if (far[at]! < least) return;
      pixels.push(at);
      depths.push(far[at]!);
      far[at] = 0;
      todo.push(at);
    };
    todo.length = 0;
    visit(start);
    for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
      const column = at % width;
      const row = Math.floor(at / width);
      left = Math.min(left, column);
      right = Math.max(right, column);
      top = Math.min(top, row);
      bottom = Math.max(bottom, row);
      for (const step of [-1, 1, -width, width, -width - 1, -width + 1, width - 1, width + 1])
        visit(at + step);
    }
    if (Math.hypot(right - left, bottom - top) < LONG * dot) continue;
    depths.sort((a, b) => a - b);
    const half = depths[Math.floor(0.8 * depths.length)]! / 3;
    if (2 * half >= WIDE * dot && 2 * half < SOLID * dot) cores.push({ pixels, half });
  }
  return cores;
}

/** 1 where a pixel is inked, against the ground of the tile it lies in. */
function inkOf(picture: GreyPicture): Uint8Array {
  const { width, height, grey } = picture;
  const ground = groundOf(picture);
  const mask = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const down = Math.min(ground.rows - 1, Math.floor((row * ground.rows) / height)) * ground.columns;
    for (let column = 0; column < width; column++) {
      const tile = down + Math.min(ground.columns - 1, Math.floor((column * ground.columns) / width));
      const at = row * width + column;
      if (grey[at]! < ground.level[tile]! - INK * ground.depth[tile]!) mask[at] = 1;
    }
  }
  return mask;
}
