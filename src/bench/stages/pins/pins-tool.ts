import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pattern, Pin } from '#pattern/pattern.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../sheet/tool.ts';
import { placeInLine } from './in-line.ts';

/** What a touch of the sheet does at this stage. */
export type PinsMode = 'choose' | 'add' | 'remove';

export interface PinsToolState {
  readonly pattern: Pattern;
  readonly mode: PinsMode;
  readonly chosen: string | null;
  /** Pins in doubt, ringed on the sheet. */
  readonly doubtful: readonly Pin[];
  /** Whether pins fall in line with their neighbours. */
  readonly inLine: boolean;
}

export interface PinsToolEvents {
  choose(id: string | null): void;
  /** `settled` where the place is in line with the pins round it. */
  add(at: Point, settled: boolean): void;
  remove(id: string): void;
  move(pin: Pin): void;
}

/** Milliseconds after an edit in which another may come, and is answered first. */
const PAUSE = 250;

/** From so far a pin falls in line, in reaches of a touch: 10 pixels on the screen. */
const DRAWN = 10 / 22;

/** Choosing, adding, moving and removing pins on the sheet. */
export class PinsTool implements SheetTool {
  readonly #events: PinsToolEvents;
  #state: PinsToolState;
  /** Made a while after an edit, or when it is first asked: among very many pins that takes longer than a tap may. */
  #index: PointIndex | null = null;
  #making = 0;
  #dragged: Pin | null = null;
  /** Where a finger that is still down would add a pin. */
  #aim: Point | null = null;
  #heldInLine = false;

  constructor(state: PinsToolState, events: PinsToolEvents) {
    this.#state = state;
    this.#events = events;
  }

  update(state: PinsToolState): void {
    const changed = state.pattern.pins !== this.#state.pattern.pins;
    this.#state = state;
    if (!changed) return;
    this.#index = null;
    clearTimeout(this.#making);
    this.#making = window.setTimeout(() => this.#pins(), PAUSE);
  }

  tap(touch: SheetTouch): void {
    const { mode } = this.#state;
    const pin = mode === 'add' ? null : this.#pinAt(touch);
    if (mode === 'add') this.#add(touch);
    else if (mode === 'choose') this.#events.choose(pin?.id ?? null);
    else if (pin) this.#events.remove(pin.id);
  }

  grabs(touch: SheetTouch): boolean {
    const { mode, chosen } = this.#state;
    // A finger covers what it touches: it may slide to the place, under the loupe, and is lifted there.
    if (mode === 'add') return touch.by !== 'mouse';
    return mode === 'choose' && chosen !== null && this.#pinAt(touch)?.id === chosen;
  }

  drag(from: SheetTouch, to: SheetTouch): void {
    if (this.#state.mode === 'add') this.#aim = this.#inLine(to, null) ?? to.at;
    else this.#dragged = this.#moved(from, to);
  }

  drop(from: SheetTouch, to: SheetTouch, kept: boolean): void {
    const pin = this.#dragged && this.#moved(from, to);
    const adding = this.#aim !== null;
    this.#dragged = null;
    this.#aim = null;
    if (kept && adding) this.#add(to);
    if (kept && pin) this.#events.move(pin);
  }

  draw(overlay: Overlay): void {
    const { chosen, doubtful, pattern } = this.#state;
    for (const pin of doubtful) ring(overlay, pin, 9, '#a35a00', [4, 3]);
    const pin = this.#dragged ?? pattern.pins.find(({ id }) => id === chosen);
    if (pin) ring(overlay, pin, 13, '#1c5d5a', []);
    const held = this.#dragged ?? this.#aim;
    if (!held) return;
    dot(overlay, held);
    if (this.#heldInLine) cross(overlay, held);
  }

  #add(touch: SheetTouch): void {
    const settled = this.#inLine(touch, null);
    this.#events.add(settled ?? touch.at, settled !== null);
  }

  #inLine({ at, reach }: SheetTouch, except: string | null): Point | null {
    this.#heldInLine = false;
    if (!this.#state.inLine) return null;
    const { pins } = this.#state.pattern;
    const itself = except === null ? null : pins.findIndex(({ id }) => id === except);
    const place = placeInLine(at, DRAWN * reach, pins, this.#pins(), itself);
    this.#heldInLine = place !== null;
    return place;
  }

  #pins(): PointIndex {
    this.#index ??= new PointIndex(this.#state.pattern.pins);
    return this.#index;
  }

  #pinAt({ at, reach }: SheetTouch): Pin | null {
    const index = this.#pins().nearest(at, reach);
    return index === null ? null : this.#state.pattern.pins[index]!;
  }

  #moved(from: SheetTouch, to: SheetTouch): Pin | null {
    const pin = this.#state.pattern.pins.find(({ id }) => id === this.#state.chosen);
    if (!pin) return null;
    const at = { x: pin.x + to.at.x - from.at.x, y: pin.y + to.at.y - from.at.y };
    return { ...pin, ...(this.#inLine({ ...to, at }, pin.id) ?? at) };
  }
}

function ring({ context, place }: Overlay, pin: Pin, radius: number, colour: string, dash: number[]): void {
  const { left, top } = place(pin);
  context.lineWidth = 3;
  context.strokeStyle = colour;
  context.setLineDash(dash);
  context.beginPath();
  context.arc(left, top, radius, 0, 2 * Math.PI);
  context.stroke();
  context.setLineDash([]);
}

function dot({ context, place, camera }: Overlay, pin: Point & { readonly diameter?: number }): void {
  const { left, top } = place(pin);
  context.fillStyle = '#1c5d5a';
  context.beginPath();
  context.arc(left, top, Math.max(2, ((pin.diameter ?? 0.6) / 2) * camera.scale), 0, 2 * Math.PI);
  context.fill();
}

/** Says that a pin which is held has fallen in line. */
function cross({ context, place }: Overlay, at: Point): void {
  const { left, top } = place(at);
  context.lineWidth = 2;
  context.strokeStyle = '#1c5d5a';
  context.beginPath();
  for (const [x, y] of [
    [1, 1],
    [-1, -1],
    [1, -1],
    [-1, 1],
  ] as const) {
    context.moveTo(left + 14 * x, top + 14 * y);
    context.lineTo(left + 26 * x, top + 26 * y);
  }
  context.stroke();
}
