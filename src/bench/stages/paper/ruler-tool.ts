import { type Affine, applyAffine, invert } from '#base/geometry/affine.ts';
import type { PixelPoint, Point } from '#base/geometry/point.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../sheet/tool.ts';

/** Which of the two places. */
export type End = 0 | 1;

export type Places = readonly [PixelPoint | null, PixelPoint | null];

export interface RulerToolState {
  readonly toPattern: Affine;
  /** Both ends of the distance, in dots of the picture; null where they are not set. */
  readonly places: Places;
  /** The end that the next touch sets. */
  readonly active: End;
}

export interface RulerToolEvents {
  choose(end: End): void;
  put(end: End, place: PixelPoint): void;
  /** By so many dots. */
  nudge(columns: number, rows: number): void;
}

/** Handles are as large as a fingertip, and clear in the middle. */
const HANDLE = 22;
const COLOUR = '#1c5d5a';

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Two places on the paper, to be set by touching it, and moved by dragging their handles or by keys. */
export class RulerTool implements SheetTool {
  #events: RulerToolEvents;
  #state: RulerToolState;
  #dragged: { readonly end: End; readonly at: Point } | null = null;

  constructor(state: RulerToolState, events: RulerToolEvents) {
    this.#state = state;
    this.#events = events;
  }

  update(state: RulerToolState, events: RulerToolEvents): void {
    this.#state = state;
    this.#events = events;
  }

  tap(touch: SheetTouch): void {
    const end = this.#endAt(touch);
    if (end !== null && touch.by !== 'keyboard') this.#events.choose(end);
    else this.#events.put(this.#state.active, this.#toPixels(touch.at));
  }

  grabs(touch: SheetTouch): boolean {
    return this.#endAt(touch) !== null;
  }

  drag(from: SheetTouch, to: SheetTouch): void {
    this.#dragged = this.#moved(from, to);
  }

  drop(from: SheetTouch, to: SheetTouch, kept: boolean): void {
    const moved = this.#moved(from, to);
    this.#dragged = null;
    if (kept && moved) this.#events.put(moved.end, this.#toPixels(moved.at));
  }

  /** Alt and an arrow moves the end by one dot, with Shift by ten. */
  key({ key, altKey, shiftKey }: KeyboardEvent): boolean {
    const way = WAYS[key];
    if (!altKey || !way) return false;
    const step = shiftKey ? 10 : 1;
    this.#events.nudge(way[0] * step, way[1] * step);
    return true;
  }

  draw(overlay: Overlay): void {
    const [from, to] = [this.#shownAt(0), this.#shownAt(1)];
    if (from && to) strokes(overlay, (path) => drawLine(path, overlay, from, to));
    for (const end of [0, 1] as const) {
      const at = end === 0 ? from : to;
      if (at) this.#drawHandle(overlay, end, at);
    }
  }

  #drawHandle(overlay: Overlay, end: End, at: Point): void {
    const { left, top } = overlay.place(at);
    strokes(overlay, (path) => {
      path.moveTo(left + HANDLE, top);
      path.arc(left, top, HANDLE, 0, 2 * Math.PI);
      for (const [x, y] of Object.values(WAYS)) {
        path.moveTo(left + 5 * x, top + 5 * y);
        path.lineTo(left + HANDLE * x, top + HANDLE * y);
      }
    });
    const { context } = overlay;
    context.fillStyle = end === this.#state.active ? COLOUR : '#ffffff';
    context.strokeStyle = COLOUR;
    context.lineWidth = 2;
    context.beginPath();
    context.arc(left + HANDLE * 0.75, top - HANDLE * 0.75, 10, 0, 2 * Math.PI);
    context.fill();
    context.stroke();
    context.fillStyle = end === this.#state.active ? '#ffffff' : COLOUR;
    context.font = '600 14px "Source Sans 3", system-ui, sans-serif';
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    context.fillText(String(end + 1), left + HANDLE * 0.75, top - HANDLE * 0.75 + 1);
  }

  #shownAt(end: End): Point | null {
    if (this.#dragged?.end === end) return this.#dragged.at;
    const place = this.#state.places[end];
    return place && this.#toSheet(place);
  }

  #endAt({ at, reach }: SheetTouch): End | null {
    const away = ([0, 1] as const).map((end) => {
      const place = this.#shownAt(end);
      return place ? Math.hypot(place.x - at.x, place.y - at.y) : Number.POSITIVE_INFINITY;
    });
    const nearest: End = away[1]! < away[0]! ? 1 : 0;
    return away[nearest]! <= reach ? nearest : null;
  }

  #moved(from: SheetTouch, to: SheetTouch): { readonly end: End; readonly at: Point } | null {
    const end = this.#dragged?.end ?? this.#endAt(from);
    const place = end === null ? null : this.#state.places[end];
    if (end === null || !place) return null;
    const { x, y } = this.#toSheet(place);
    return { end, at: { x: x + to.at.x - from.at.x, y: y + to.at.y - from.at.y } };
  }

  readonly #toSheet = ({ column, row }: PixelPoint): Point =>
    applyAffine(this.#state.toPattern, { x: column, y: row });

  readonly #toPixels = (at: Point): PixelPoint => {
    const { x, y } = applyAffine(invert(this.#state.toPattern), at);
    return { column: x, row: y };
  };
}

function drawLine(path: CanvasRenderingContext2D, { place }: Overlay, from: Point, to: Point): void {
  const [one, other] = [place(from), place(to)];
  const length = Math.hypot(other.left - one.left, other.top - one.top);
  if (length <= 2 * HANDLE) return;
  const across = ((other.left - one.left) / length) * HANDLE;
  const down = ((other.top - one.top) / length) * HANDLE;
  path.moveTo(one.left + across, one.top + down);
  path.lineTo(other.left - across, other.top - down);
}

/** A dark line with a light rim, seen on paper and on ink alike. */
function strokes({ context }: Overlay, draw: (path: CanvasRenderingContext2D) => void): void {
  for (const [width, colour] of [
    [6, '#ffffff'],
    [2.5, COLOUR],
  ] as const) {
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.beginPath();
    draw(context);
    context.stroke();
  }
}
