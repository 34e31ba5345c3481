import KDBush from 'kdbush';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { greyAt, type Looker, type Ruler } from './profile.ts';

/** Directions that are looked into round a dot. */
const DIRECTIONS = 72;
/** A trail ends where no ink was seen for so many dot diameters. */
const LONGEST_GAP = 1.6;
/** No working line is followed further than this many dot diameters. */
const FURTHEST = 60;

/** Directions (radians, clockwise from the right) in which thin ink leaves a dot. */
export function spokesOf(picture: GreyPicture, hole: PixelPoint, ruler: Ruler, contrast: number): number[] {
  const rings = [0.85, 1.2].map((reach) =>
    Float32Array.from({ length: DIRECTIONS }, (_, k) => {
      const angle = (2 * Math.PI * k) / DIRECTIONS;
      const radius = reach * ruler.dot;
      return greyAt(picture, hole.column + radius * Math.cos(angle), hole.row + radius * Math.sin(angle));
    }),
  );
  const limits = rings.map((ring) => ring.slice().sort()[Math.floor(0.8 * DIRECTIONS)]! - contrast);
  const darkness = (k: number): number =>
    rings[0]![(k + DIRECTIONS) % DIRECTIONS]! + rings[1]![(k + DIRECTIONS) % DIRECTIONS]!;
  const spokes: number[] = [];
  for (let k = 0; k < DIRECTIONS; k++) {
    if (!rings.every((ring, n) => ring[k]! < limits[n]!)) continue;
    const lowest = [1, 2].every((n) => darkness(k) <= darkness(k + n) && darkness(k) < darkness(k - n));
    if (lowest) spokes.push((2 * Math.PI * k) / DIRECTIONS);
  }
  return spokes;
}

/** Follows ink away from dots until it meets another dot. */
export class Follower {
  private readonly picture: GreyPicture;
  private readonly holes: readonly PixelPoint[];
  private readonly ruler: Ruler;
  private readonly tree: KDBush;
  private readonly looker: Looker;

  constructor(picture: GreyPicture, holes: readonly PixelPoint[], looker: Looker) {
    this.picture = picture;
    this.holes = holes;
    this.ruler = looker.ruler;
    this.looker = looker;
    this.tree = new KDBush(holes.length);
    for (const { column, row } of holes) this.tree.add(column, row);
    this.tree.finish();
  }

  /** Index of the first dot that a nearly straight line from dot `from` in this direction runs into, or null. */
  follow(from: number, angle: number, contrast: number): number | null {
    const { unit, dot } = this.ruler;
    const start = this.holes[from]!;
    let [x, y] = [Math.cos(angle), Math.sin(angle)];
    let gap = 0;
    let ink = -1;
    for (let way = 0.9 * dot; way < FURTHEST * dot; way += unit) {
      const at = { column: start.column + way * x, row: start.row + way * y };
      if (!this.inPicture(at)) return null;
      const met = this.tree.within(at.column, at.row, 0.5 * dot).find((index) => index !== from);
      if (met !== undefined) return met;
      const step = this.looker.look(at.column, at.row, x, y);
      if (step.contrast < contrast) {
        // In a knot of lines, or across a gimp, all is ink, and the way is kept.
        if (step.grey > ink + 0.4 * contrast) gap += unit;
        if (gap > LONGEST_GAP * dot) return null;
        continue;
      }
      gap = 0;
      ink = ink < 0 ? step.grey : 0.8 * ink + 0.2 * step.grey;
      // The further away, the better the direction is known, and the less one step may turn it.
      const turn = (0.4 * step.offset) / way;
      [x, y] = [x + turn * y, y - turn * x];
      const size = Math.hypot(x, y);
      [x, y] = [x / size, y / size];
    }
    return null;
  }

  /** Whether the straight way between two dots grazes another: a line that bends there is told piece by piece. */
  isBlocked(from: number, to: number): boolean {
    const a = this.holes[from]!;
    const b = this.holes[to]!;
    const dx = b.column - a.column;
    const dy = b.row - a.row;
    const size = Math.hypot(dx, dy);
    const reach = 0.7 * this.ruler.dot;
    const pieces = Math.max(1, Math.ceil(size / (4 * this.ruler.dot)));
    for (let piece = 0; piece < pieces; piece++) {
      const t = (piece + 0.5) / pieces;
      for (const index of this.tree.within(a.column + t * dx, a.row + t * dy, size / pieces / 2 + reach)) {
        if (index === from || index === to) continue;
        const u = this.holes[index]!.column - a.column;
        const v = this.holes[index]!.row - a.row;
        const along = (u * dx + v * dy) / size;
        if (along > 0 && along < size && Math.abs(u * dy - v * dx) / size < reach) return true;
      }
    }
    return false;
  }

  private inPicture({ column, row }: PixelPoint): boolean {
    return column >= 0 && row >= 0 && column <= this.picture.width - 1 && row <= this.picture.height - 1;
  }
}
