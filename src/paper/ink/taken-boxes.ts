import type { Box } from '#base/geometry/box.ts';

/** Boxes that are taken, kept by the squares they touch, so that asking stays quick when there are very many. */
export class TakenBoxes {
  readonly #squares = new Map<string, Box[]>();
  /** Boxes that touch very many squares; there are never more than a few of these. */
  readonly #large: Box[] = [];

  add(box: Box): void {
    const squares = squaresOf(box);
    if (!squares) this.#large.push(box);
    else for (const square of squares) this.#at(square).push(box);
  }

  /** Whether any taken box overlaps this one. */
  overlap(box: Box): boolean {
    if (this.#large.some((other) => boxesOverlap(box, other))) return true;
    const squares = squaresOf(box) ?? this.#squares.keys();
    for (const square of squares) {
      if (this.#squares.get(square)?.some((other) => boxesOverlap(box, other))) return true;
    }
    return false;
  }

  #at(square: string): Box[] {
    let boxes = this.#squares.get(square);
    if (!boxes) {
      boxes = [];
      this.#squares.set(square, boxes);
    }
    return boxes;
  }
}

export const boxesOverlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Side of a square, mm: a little more than a word is high. */
const SIDE = 8;
const MOST_SQUARES = 200;

/** The squares that a box touches, or undefined where there are too many to count. */
function squaresOf({ left, top, right, bottom }: Box): string[] | undefined {
  const [from, to] = [Math.floor(left / SIDE), Math.floor(right / SIDE)];
  const [first, last] = [Math.floor(top / SIDE), Math.floor(bottom / SIDE)];
  const count = (to - from + 1) * (last - first + 1);
  if (!(count <= MOST_SQUARES)) return undefined;
  const squares: string[] = [];
  for (let column = from; column <= to; column++) {
    for (let row = first; row <= last; row++) squares.push(`${column} ${row}`);
  }
  return squares;
}
