import { applyAffine } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Cross, Image, InkMark, Text } from './mark.ts';
import type { Path } from './path.ts';

/** Whoever wants to know where a mark runs: a screen draws it, a box measures it, a writer prints it. */
export interface OutlineContext {
  move(x: number, y: number): void;
  line(x: number, y: number): void;
  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  /** A whole circle as a line of its own. */
  circle(x: number, y: number, radius: number): void;
  close(): void;
}

/**
 * The one place that says where a mark runs: the line to fill (disc, fill), the middle of the line to stroke
 * (ring, cross, stroke), or the frame (text, image).
 */
export function outline(mark: InkMark, context: OutlineContext): void {
  switch (mark.kind) {
    case 'disc':
      context.circle(mark.at.x, mark.at.y, mark.diameter / 2);
      break;
    case 'ring':
      context.circle(mark.at.x, mark.at.y, (mark.diameter - mark.width) / 2);
      break;
    case 'cross':
      crossOutline(mark, context);
      break;
    case 'stroke':
    case 'fill':
      pathOutline(mark.path, context);
      break;
    case 'text':
      frame(textCorners(mark), context);
      break;
    case 'image':
      frame(imageCorners(mark), context);
  }
}

/** How thick the line along the outline is, mm; 0 where the outline itself is the edge. */
export const lineWidth = (mark: InkMark): number =>
  mark.kind === 'ring' || mark.kind === 'cross' || mark.kind === 'stroke' ? mark.width : 0;

/** How far letters reach above and below their baseline, in parts of the letter square. */
export const TEXT_RISE = 0.78;
export const TEXT_DROP = 0.24;

/** The four corners of the picture's outer edge; pixel centres are whole, so the edge lies half a pixel further out. */
export const imageCorners = ({ picture: { width, height }, place }: Image): Point[] =>
  [
    { x: -0.5, y: -0.5 },
    { x: width - 0.5, y: -0.5 },
    { x: width - 0.5, y: height - 0.5 },
    { x: -0.5, y: height - 0.5 },
  ].map((corner) => applyAffine(place, corner));

/** Where the left end of the baseline lies. */
export function textStart({ at, align, width, turn }: Text): Point {
  const back = align === 'left' ? 0 : align === 'middle' ? width / 2 : width;
  return { x: at.x - back * Math.cos(turn), y: at.y - back * Math.sin(turn) };
}

function textCorners(text: Text): Point[] {
  const start = textStart(text);
  const [cos, sin] = [Math.cos(text.turn), Math.sin(text.turn)];
  const at = (along: number, down: number): Point => ({
    x: start.x + along * cos - down * sin,
    y: start.y + along * sin + down * cos,
  });
  const [rise, drop] = [-TEXT_RISE * text.size, TEXT_DROP * text.size];
  return [at(0, rise), at(text.width, rise), at(text.width, drop), at(0, drop)];
}

function crossOutline({ at, size, turn }: Cross, context: OutlineContext): void {
  const [cos, sin] = [(Math.cos(turn) * size) / 2, (Math.sin(turn) * size) / 2];
  context.move(at.x - cos, at.y - sin);
  context.line(at.x + cos, at.y + sin);
  context.move(at.x + sin, at.y - cos);
  context.line(at.x - sin, at.y + cos);
}

/** Where a path runs. */
export function pathOutline(path: Path, context: OutlineContext): void {
  for (const step of path) {
    if (step.step === 'move') context.move(step.to.x, step.to.y);
    else if (step.step === 'line') context.line(step.to.x, step.to.y);
    else if (step.step === 'close') context.close();
    else {
      const { first, second, to } = step;
      context.curve(first.x, first.y, second.x, second.y, to.x, to.y);
    }
  }
}

function frame(corners: readonly Point[], context: OutlineContext): void {
  corners.forEach(({ x, y }, index) => {
    if (index === 0) context.move(x, y);
    else context.line(x, y);
  });
  context.close();
}
