import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import type { PinLine } from './line.ts';
import { greyAt, type Looker, type Ruler } from './profile.ts';

/** Hatching lies closer together than this many dot diameters. */
const CLOSE = 2.6;

/**
 * Drops lines of a hatching that happen to run from dot to dot: such a line has a parallel on each side, close by, and
 * neither of these joins dots. In a band of close working lines the parallels do, and the line stays.
 */
export function withoutHatching(
  picture: GreyPicture,
  holes: readonly PixelPoint[],
  lines: readonly PinLine[],
  looker: Looker,
  contrast: number,
): PinLine[] {
  const { ruler } = looker;
  const middles = new Middles(holes, lines, CLOSE * ruler.dot);
  return lines.filter((line) => {
    const a = holes[line.from]!;
    const b = holes[line.to]!;
    const size = Math.hypot(b.column - a.column, b.row - a.row);
    if (size < 3 * ruler.dot) return true;
    const across = meanAcross(picture, a, b, ruler);
    return [-1, 1].some((side) => {
      const offset = parallelAt(across, side, ruler, contrast);
      if (offset === null || !isLine(looker, a, b, offset, contrast)) return true;
      return middles.hasParallel(line, offset, 0.45 * ruler.dot);
    });
  });
}

/** Mean grey at each distance (in units, from -reach to reach) beside the middle part of the way from `a` to `b`. */
function meanAcross(picture: GreyPicture, a: PixelPoint, b: PixelPoint, ruler: Ruler): Float32Array {
  const reach = Math.ceil((CLOSE * ruler.dot) / ruler.unit);
  const dx = b.column - a.column;
  const dy = b.row - a.row;
  const size = Math.hypot(dx, dy);
  const steps = Math.min(16, Math.max(8, Math.ceil(size / (2 * ruler.unit))));
  const across = new Float32Array(2 * reach + 1);
  for (let k = 0; k < steps; k++) {
    const t = 0.25 + (0.5 * (k + 0.5)) / steps;
    for (let n = -reach; n <= reach; n++) {
      const column = a.column + t * dx + ((n * ruler.unit) / size) * dy;
      const row = a.row + t * dy - ((n * ruler.unit) / size) * dx;
      across[n + reach]! += greyAt(picture, column, row) / steps;
    }
  }
  return across;
}

/** Where the nearest dark line lies on one side, in pixels to the left of the way; null where there is none. */
function parallelAt(across: Float32Array, side: number, ruler: Ruler, contrast: number): number | null {
  const middle = across.length >> 1;
  const from = Math.ceil((0.7 * ruler.dot) / ruler.unit);
  const sorted = across.slice().sort();
  const paper = sorted[Math.floor(0.8 * sorted.length)]!;
  let best: number | null = null;
  for (let n = from; n <= middle; n++) {
    const grey = across[middle + side * n]!;
    if (grey > paper - 0.6 * contrast) {
      if (best !== null) break;
      continue;
    }
    if (best === null || grey < across[middle + side * best]!) best = n;
  }
  return best === null ? null : side * best * ruler.unit;
}

/** Whether ink runs along most of the middle part of the way from `a` to `b`, moved to its left by `offset`. */
function isLine(looker: Looker, a: PixelPoint, b: PixelPoint, offset: number, contrast: number): boolean {
  const dx = b.column - a.column;
  const dy = b.row - a.row;
  const size = Math.hypot(dx, dy);
  const at = (t: number): PixelPoint => ({
    column: a.column + t * dx + (offset / size) * dy,
    row: a.row + t * dy - (offset / size) * dx,
  });
  const seen = looker.along(at(0.25), at(0.75)).contrast;
  return seen.filter((step) => step >= contrast).length >= 0.5 * seen.length;
}

/** The middles of all lines, in cells, so that the line beside another one is found at once. */
class Middles {
  private readonly holes: readonly PixelPoint[];
  private readonly cells = new Map<string, PinLine[]>();
  private readonly side: number;

  constructor(holes: readonly PixelPoint[], lines: readonly PinLine[], side: number) {
    this.holes = holes;
    this.side = side;
    for (const line of lines) {
      // A line is found from anywhere along it.
      const { a, b, size } = this.ends(line);
      const pieces = Math.max(1, Math.ceil(size / side));
      for (let piece = 0; piece <= pieces; piece++) {
        const t = piece / pieces;
        const key = this.key(a.column + t * (b.column - a.column), a.row + t * (b.row - a.row));
        const cell = this.cells.get(key);
        if (!cell) this.cells.set(key, [line]);
        else if (!cell.includes(line)) cell.push(line);
      }
    }
  }

  /** Whether another line runs nearly parallel to this one, `offset` pixels to its left, to within `slack`. */
  hasParallel(line: PinLine, offset: number, slack: number): boolean {
    const { a, b, size } = this.ends(line);
    const dx = (b.column - a.column) / size;
    const dy = (b.row - a.row) / size;
    const column = (a.column + b.column) / 2 + offset * dy;
    const row = (a.row + b.row) / 2 - offset * dx;
    for (const x of [-1, 0, 1]) {
      for (const y of [-1, 0, 1]) {
        for (const other of this.cells.get(this.key(column + x * this.side, row + y * this.side)) ?? []) {
          if (other !== line && this.passes(other, column, row, dx, dy, slack)) return true;
        }
      }
    }
    return false;
  }

  private passes(
    other: PinLine,
    column: number,
    row: number,
    dx: number,
    dy: number,
    slack: number,
  ): boolean {
    const { a, b, size } = this.ends(other);
    const ex = (b.column - a.column) / size;
    const ey = (b.row - a.row) / size;
    if (Math.abs(dx * ey - dy * ex) > 0.2) return false;
    const along = (column - a.column) * ex + (row - a.row) * ey;
    const beside = Math.abs((column - a.column) * ey - (row - a.row) * ex);
    return along > 0 && along < size && beside < slack;
  }

  private ends(line: PinLine): { a: PixelPoint; b: PixelPoint; size: number } {
    const a = this.holes[line.from]!;
    const b = this.holes[line.to]!;
    return { a, b, size: Math.hypot(b.column - a.column, b.row - a.row) || 1 };
  }

  private key(column: number, row: number): string {
    return `${Math.floor(column / this.side)} ${Math.floor(row / this.side)}`;
  }
}
