import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';

/**
 * Whether a hole at this place could not have been seen: it lies outside the picture or at its very edge, or there is as
 * much light all about it as in a hole.
 */
export function isHidden(
  { width, height, grey }: GreyPicture,
  { column, row }: PixelPoint,
  diameter: number,
  holes: 'light' | 'dark',
  amplitude: number,
): boolean {
  // the hole may be off its place by most of its width, and one that the edge cuts is not measured
  const margin = 1.4 * diameter + 3;
  if (!(column >= margin && row >= margin && column < width - margin && row < height - margin)) return true;
  const greys: number[] = [];
  const reach = Math.ceil(1.2 * diameter);
  for (
    let y = Math.max(0, Math.round(row) - reach);
    y <= Math.min(height - 1, Math.round(row) + reach);
    y++
  ) {
    for (
      let x = Math.max(0, Math.round(column) - reach);
      x <= Math.min(width - 1, Math.round(column) + reach);
      x++
    ) {
      greys.push(grey[y * width + x]!);
    }
  }
  greys.sort((one, other) => one - other);
  const middle = greys[greys.length >> 1]!;
  // a hole needs room to stand out: light up to 255, or dark down to 0
  const room = holes === 'light' ? 255 - middle : middle;
  return room < 0.3 * amplitude;
}
