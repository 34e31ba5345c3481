import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '../drawing/mark.ts';
import { type OutlineContext, outline } from '../drawing/outline.ts';
import type { PathStep } from '../drawing/path.ts';
import { letterPath } from '../type/letter-path.ts';
import type { Typeface } from '../type/typeface.ts';
import type { CutLine } from './drawing.ts';

/** The lines that a tool follows for a mark: the middle of what is stroked, the edge of what is filled, letters' edges. */
export function cutLines(mark: InkMark, typeface: Typeface): CutLine[] {
  if (mark.kind === 'image') return [];
  if (mark.kind === 'text') {
    const path = letterPath(mark, typeface);
    return path.length ? [{ kind: 'path', path }] : [];
  }
  const context = new LineContext();
  outline(mark, context);
  return context.finish();
}

class LineContext implements OutlineContext {
  #steps: PathStep[] = [];
  readonly #circles: CutLine[] = [];

  move(x: number, y: number): void {
    this.#steps.push({ step: 'move', to: { x, y } });
  }

  line(x: number, y: number): void {
    this.#steps.push({ step: 'line', to: { x, y } });
  }

  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    const p = (px: number, py: number): Point => ({ x: px, y: py });
    this.#steps.push({ step: 'curve', first: p(x1, y1), second: p(x2, y2), to: p(x, y) });
  }

  circle(x: number, y: number, radius: number): void {
    this.#circles.push({ kind: 'circle', at: { x, y }, diameter: 2 * radius });
  }

  close(): void {
    this.#steps.push({ step: 'close' });
  }

  finish(): CutLine[] {
    return this.#steps.length ? [...this.#circles, { kind: 'path', path: this.#steps }] : this.#circles;
  }
}
