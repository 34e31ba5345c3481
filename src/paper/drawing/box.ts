import { type Box, emptyBox, growBox, isEmptyBox, joinBoxes } from '#base/geometry/box.ts';
import type { InkMark } from './mark.ts';
import { lineWidth, type OutlineContext, outline } from './outline.ts';

/** The box that holds all ink of a mark. Curves count with their control points, so it may be a little roomy. */
export function boxOfMark(mark: InkMark): Box {
  const context = new BoxContext();
  outline(mark, context);
  if (isEmptyBox(context.box)) return context.box;
  const inked = growBox(context.box, lineWidth(mark) / 2);
  if (!mark.clip) return inked;
  return {
    left: Math.max(inked.left, mark.clip.left),
    top: Math.max(inked.top, mark.clip.top),
    right: Math.min(inked.right, mark.clip.right),
    bottom: Math.min(inked.bottom, mark.clip.bottom),
  };
}

/** The box that holds all ink of all marks; empty where there is none. */
export function boxOfMarks(marks: Iterable<InkMark>): Box {
  let box = emptyBox;
  for (const mark of marks) {
    const one = boxOfMark(mark);
    if (!isEmptyBox(one)) box = joinBoxes(box, one);
  }
  return box;
}

class BoxContext implements OutlineContext {
  box = emptyBox;

  move(x: number, y: number): void {
    this.#reach(x, y, 0);
  }

  line(x: number, y: number): void {
    this.#reach(x, y, 0);
  }

  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.#reach(x1, y1, 0);
    this.#reach(x2, y2, 0);
    this.#reach(x, y, 0);
  }

  circle(x: number, y: number, radius: number): void {
    this.#reach(x, y, radius);
  }

  close(): void {}

  #reach(x: number, y: number, radius: number): void {
    this.box = joinBoxes(this.box, {
      left: x - radius,
      top: y - radius,
      right: x + radius,
      bottom: y + radius,
    });
  }
}
