import { type Box, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { PointIndex } from '#base/geometry/point-index.ts';
import { boxOfMark } from '../drawing/box.ts';
import type { Text } from '../drawing/mark.ts';
import { TakenBoxes } from './taken-boxes.ts';

/** Puts words where they hide no hole and no other words. */
export class LabelPlacer {
  readonly #holes: PointIndex;
  readonly #reach: number;
  readonly #taken = new TakenBoxes();

  /** `reach` is how far the ink of a hole goes from its centre, mm. */
  constructor(holes: PointIndex, reach: number) {
    this.#holes = holes;
    this.#reach = reach;
  }

  /** No words will be put into this box. */
  keepFree(box: Box): void {
    this.#taken.add(box);
  }

  /** The text where it is, or at the nearest free place round it, or undefined where all are taken. */
  place(text: Text): Text | undefined {
    for (const { x, y } of offsets) {
      const moved = { ...text, at: { x: text.at.x + x, y: text.at.y + y } };
      if (this.#isFree(moved)) {
        this.#taken.add(boxOfMark(moved));
        return moved;
      }
    }
    return undefined;
  }

  /** The first of the places where the text is free, or undefined. */
  placeAtOneOf(text: Text, places: Iterable<Point>): Text | undefined {
    for (const at of places) {
      const moved = { ...text, at };
      if (this.#isFree(moved)) {
        this.#taken.add(boxOfMark(moved));
        return moved;
      }
    }
    return undefined;
  }

  #isFree(text: Text): boolean {
    const box = boxOfMark(text);
    return this.#holes.inBox(growBox(box, this.#reach + CLEAR)).length === 0 && !this.#taken.overlap(box);
  }
}

const CLEAR = 0.15;

/** Places to try round the wanted one: rings of sixteen, growing outward to 9 mm. */
const offsets: readonly Point[] = [
  { x: 0, y: 0 },
  ...[0.75, 1.5, 2.25, 3, 4, 5, 6, 7.5, 9].flatMap((radius) =>
    Array.from({ length: 16 }, (_, k) => ({
      x: radius * Math.cos((k * Math.PI) / 8),
      y: radius * Math.sin((k * Math.PI) / 8),
    })),
  ),
];
