import type { Random } from '#base/random.ts';
import type { Layer } from '../scan/layer.ts';
import { smoothField } from '../scan/noise.ts';
import type { CardSettings } from './options.ts';

/** Greys at a pixel: of what is seen past the card, and of what is seen through a hole. */
export interface Scene {
  readonly card: number;
  readonly behind: (column: number, row: number) => number;
  readonly through: (column: number, row: number) => number;
}

export function sceneOf(solid: Layer, { scene, width, height }: CardSettings, random: Random): Scene {
  const field = smoothField(random);
  const wide = Math.max(width, height);
  switch (scene) {
    case 'lightbox': {
      const light = (x: number, y: number): number =>
        275 - 30 * (((x - width / 2) / wide) ** 2 + ((y - height / 2) / wide) ** 2) * 4;
      return { card: 45, behind: light, through: light };
    }
    case 'window': {
      const bar = width * (0.1 + 0.8 * random());
      const light = (x: number, y: number): number => {
        const shade = Math.exp(-(((x - bar) / (0.03 * width)) ** 2));
        const tree = Math.max(0, field((3 * x) / wide, (3 * y) / wide)) * (y / height);
        return 285 - 120 * shade - 90 * tree;
      };
      return { card: 42, behind: light, through: light };
    }
    case 'lamp': {
      const leak = leakOf(solid, field);
      return {
        card: 38,
        behind: (x, y) => 26 + 18 * field((4 * x) / wide, (4 * y) / wide) + leak(x, y),
        through: (x, y) => 265 + 25 * field((2 * x) / wide + 7, (2 * y) / wide),
      };
    }
    case 'front':
      return { card: 205, behind: () => 90 + 20 * field(0.3, 0.7), through: () => 35 };
  }
}

/** Light that leaks round the card here and there: bright at its edge, gone a few pixels away. */
function leakOf(solid: Layer, field: (x: number, y: number) => number): (x: number, y: number) => number {
  const { width, height } = solid;
  const reach = 6;
  return (x, y) => {
    if (field(x / 150 + 30, y / 150) < 0) return 0;
    let most = 0;
    for (const [dx, dy] of [
      [reach, 0],
      [-reach, 0],
      [0, reach],
      [0, -reach],
    ] as const) {
      const [column, row] = [x + dx, y + dy];
      if (column < 0 || row < 0 || column >= width || row >= height) continue;
      most = Math.max(most, solid.cover[row * width + column]!);
    }
    return 200 * most;
  };
}
