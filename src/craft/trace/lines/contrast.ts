import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { greyAt, type Profile, type Ruler } from './profile.ts';

/**
 * From which contrast on a step counts as ink: between what bare paper shows and what lines show. The ways between
 * neighbours fall into two kinds, and the limit that parts them best is taken (Otsu 1979), a little nearer the paper than
 * the ink, since worn lines are fainter than most. Where all are of one kind that limit means nothing, so it never rises
 * above half of what the strongest show, nor falls under what noise and a trace of the dots' own ink give.
 */
export function lineContrast(ways: readonly Profile[], dots: number): number {
  const typical = Float32Array.from(ways, (way) => medianOf(way.contrast)).sort();
  const count = typical.length;
  const total = typical.reduce((sum, value) => sum + value, 0);
  let best = 0;
  let limit = Infinity;
  let lower = 0;
  for (let split = 1; split < count; split++) {
    lower += typical[split - 1]!;
    const apart = lower / split - (total - lower) / (count - split);
    const parted = apart * apart * split * (count - split);
    if (parted <= best) continue;
    best = parted;
    limit = (0.6 * lower) / split + (0.4 * (total - lower)) / (count - split);
  }
  const strongest = typical[Math.floor(0.9 * (count - 1))] ?? 0;
  const noise = typical[Math.floor(0.02 * count)] ?? 0;
  return Math.max(Math.min(limit, 0.55 * strongest), Math.min(2 * noise, 0.4 * dots), 0.12 * dots, 5);
}

/** How much darker than the paper round it a dot usually is, grey levels. */
export function dotContrast(picture: GreyPicture, holes: readonly PixelPoint[], ruler: Ruler): number {
  const reach = 1.1 * ruler.dot;
  return medianOf(
    Float32Array.from(holes, ({ column, row }) => {
      const round = Float32Array.from({ length: 12 }, (_, k) => {
        const angle = (Math.PI * k) / 6;
        return greyAt(picture, column + reach * Math.cos(angle), row + reach * Math.sin(angle));
      });
      return round.sort()[9]! - greyAt(picture, column, row);
    }),
  );
}

/** The middle value (the upper of two); 0 where there is none. */
export const medianOf = (values: Float32Array): number => values.slice().sort()[values.length >> 1] ?? 0;
