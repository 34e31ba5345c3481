import type { Box } from '#base/geometry/box.ts';
import { MM_PER_POINT } from '#base/units/length.ts';
import type { Colour, Cross, Disc, InkMark, Ring } from '../drawing/mark.ts';
import { type OutlineContext, outline } from '../drawing/outline.ts';
import { QUARTER_CIRCLE, rectangle } from '../drawing/path.ts';

/** Turns discs, rings, crosses, strokes and fills into the drawing operators of a PDF page, in points with y down. */
export class ContentWriter {
  #lines: string[] = [];
  #fill = '';
  #stroke = '';
  #pen = '';
  readonly #shapes = new Map<string, string>();

  /** What was written since the last call. */
  take(): string {
    const text = this.#lines.join('\n');
    this.#lines = [];
    return text;
  }

  beginClip(clip: Box): void {
    this.#lines.push(
      `q ${operatorsOf({ kind: 'fill', role: 'guide', colour: '#000000', path: rectangle(clip) })} W n`,
    );
  }

  endClip(): void {
    this.#lines.push('Q');
    this.forget();
  }

  /** After operators that came from elsewhere: colours and pens are no longer known. */
  forget(): void {
    this.#fill = this.#stroke = this.#pen = '';
  }

  fillColour(colour: Colour): void {
    const wanted = colourOperator(colour, 'g', 'rg');
    if (wanted !== this.#fill) this.#lines.push(wanted);
    this.#fill = wanted;
  }

  draw(mark: Exclude<InkMark, { kind: 'text' | 'image' }>): void {
    switch (mark.kind) {
      case 'disc':
        this.fillColour(mark.colour);
        this.#stamp(mark, `disc ${mark.diameter}`, 'f');
        break;
      case 'ring':
        this.#strokeWith(mark.colour, mark.width);
        this.#stamp(mark, `ring ${mark.diameter} ${mark.width}`, 'S');
        break;
      case 'cross':
        this.#strokeWith(mark.colour, mark.width);
        this.#stamp(mark, `cross ${mark.size} ${mark.turn}`, 'S');
        break;
      case 'stroke':
        this.#strokeWith(mark.colour, mark.width, mark.dash);
        this.#lines.push(`${operatorsOf(mark)} S`);
        break;
      case 'fill':
        this.fillColour(mark.colour);
        this.#lines.push(`${operatorsOf(mark)} f*`);
    }
  }

  /**
   * The same shape again and again, each time only moved: real curves that every reader and cutter sees as such,
   * and since the bytes repeat, nearly as small as one shape that is called by name.
   */
  #stamp(mark: Disc | Ring | Cross, key: string, paint: string): void {
    let shape = this.#shapes.get(key);
    if (shape === undefined) {
      shape = operatorsOf({ ...mark, at: { x: 0, y: 0 } });
      this.#shapes.set(key, shape);
    }
    this.#lines.push(`q 1 0 0 1 ${points(mark.at.x)} ${points(mark.at.y)} cm ${shape} ${paint} Q`);
  }

  #strokeWith(colour: Colour, width: number, dash: readonly number[] = []): void {
    const wanted = colourOperator(colour, 'G', 'RG');
    if (wanted !== this.#stroke) this.#lines.push(wanted);
    this.#stroke = wanted;
    const pen = `${points(width)} w 1 J 1 j [${dash.map(points).join(' ')}] 0 d`;
    if (pen !== this.#pen) this.#lines.push(pen);
    this.#pen = pen;
  }
}

/** Millimetres as points with three decimals (0.35 micrometres), never with an exponent. */
export const points = (mm: number): string => decimal(mm / MM_PER_POINT);

export const decimal = (value: number): string => `${Math.round(value * 1000) / 1000 + 0}`;

/** '0.2 g' for greys (DeviceGray, so that black is printed with black ink alone), '1 0 0 rg' for colours. */
function colourOperator(colour: Colour, grey: string, rgb: string): string {
  const parts = [1, 3, 5].map((at) => decimal(Number.parseInt(colour.slice(at, at + 2), 16) / 255));
  return parts[0] === parts[1] && parts[1] === parts[2] ? `${parts[0]} ${grey}` : `${parts.join(' ')} ${rgb}`;
}

function operatorsOf(mark: InkMark): string {
  const context = new OperatorContext();
  outline(mark, context);
  return context.operators.join(' ');
}

class OperatorContext implements OutlineContext {
  readonly operators: string[] = [];

  move(x: number, y: number): void {
    this.operators.push(`${points(x)} ${points(y)} m`);
  }

  line(x: number, y: number): void {
    this.operators.push(`${points(x)} ${points(y)} l`);
  }

  curve(...places: [number, number, number, number, number, number]): void {
    this.operators.push(`${places.map(points).join(' ')} c`);
  }

  circle(x: number, y: number, radius: number): void {
    const handle = radius * QUARTER_CIRCLE;
    this.move(x + radius, y);
    this.curve(x + radius, y + handle, x + handle, y + radius, x, y + radius);
    this.curve(x - handle, y + radius, x - radius, y + handle, x - radius, y);
    this.curve(x - radius, y - handle, x - handle, y - radius, x, y - radius);
    this.curve(x + handle, y - radius, x + radius, y - handle, x + radius, y);
    this.close();
  }

  close(): void {
    this.operators.push('h');
  }
}
