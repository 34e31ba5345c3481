import type { InkMark, Text } from '../drawing/mark.ts';
import { type OutlineContext, outline, textStart } from '../drawing/outline.ts';

/** As much of a browser's 2D context as drawing needs, so that this folder knows nothing of browsers. */
export interface CanvasLike {
  fillStyle: unknown;
  strokeStyle: unknown;
  lineWidth: number;
  lineCap: string;
  lineJoin: string;
  font: string;
  beginPath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  arc(x: number, y: number, radius: number, from: number, to: number): void;
  closePath(): void;
  fill(rule?: 'evenodd'): void;
  stroke(): void;
  setLineDash(dash: number[]): void;
  fillText(text: string, x: number, y: number): void;
  save(): void;
  restore(): void;
  translate(x: number, y: number): void;
  rotate(turn: number): void;
}

export interface CanvasOptions {
  /** No line is drawn thinner than this, in mm: what a screen shows of a thinner one is a flicker. */
  readonly leastLine: number;
  /** The family of the letters, as the page knows it. */
  readonly fontFamily: string;
}

/**
 * Draws marks of the drawing list on a canvas whose unit is 1 mm. Marks of one look that follow each other are drawn
 * as one path, which is what makes thousands of lines quick. Pictures are the page's own business and are left out.
 */
export function drawOnCanvas(
  marks: Iterable<InkMark>,
  context: CanvasLike,
  { leastLine, fontFamily }: CanvasOptions,
): void {
  const path = new CanvasPath(context);
  let look: string | null = null;
  let end: () => void = () => {};
  const finish = () => {
    end();
    look = null;
    end = () => {};
  };
  for (const mark of marks) {
    if (mark.kind === 'image') continue;
    if (mark.kind === 'text') {
      finish();
      drawText(mark, context, fontFamily);
      continue;
    }
    const filled = mark.kind === 'disc' || mark.kind === 'fill';
    const width = filled ? 0 : Math.max(leastLine, mark.width);
    const dash = mark.kind === 'stroke' && mark.dash ? [...mark.dash] : [];
    const wanted = `${mark.colour} ${width} ${dash}`;
    // Overlapping tints would blot each other out by the even-odd rule, so that each is filled by itself.
    if (wanted !== look || mark.kind === 'fill') {
      finish();
      context.beginPath();
      look = wanted;
      end = filled
        ? () => {
            context.fillStyle = mark.colour;
            if (mark.kind === 'fill') context.fill('evenodd');
            else context.fill();
          }
        : () => {
            context.strokeStyle = mark.colour;
            context.lineWidth = width;
            context.lineCap = 'round';
            context.lineJoin = 'round';
            context.setLineDash(dash);
            context.stroke();
          };
    }
    outline(mark, path);
  }
  finish();
}

function drawText(text: Text, context: CanvasLike, family: string): void {
  const { x, y } = textStart(text);
  context.save();
  context.translate(x, y);
  context.rotate(text.turn);
  context.fillStyle = text.colour;
  context.font = `${text.weight === 'bold' ? 600 : 400} ${text.size}px ${family}`;
  context.fillText(text.text, 0, 0);
  context.restore();
}

class CanvasPath implements OutlineContext {
  readonly #context: CanvasLike;

  constructor(context: CanvasLike) {
    this.#context = context;
  }

  move(x: number, y: number): void {
    this.#context.moveTo(x, y);
  }

  line(x: number, y: number): void {
    this.#context.lineTo(x, y);
  }

  curve(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void {
    this.#context.bezierCurveTo(x1, y1, x2, y2, x, y);
  }

  circle(x: number, y: number, radius: number): void {
    this.#context.moveTo(x + radius, y);
    this.#context.arc(x, y, radius, 0, 2 * Math.PI);
  }

  close(): void {
    this.#context.closePath();
  }
}
