import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pattern, Pin } from '#pattern/pattern.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../sheet/tool.ts';

/** What a touch of the sheet does at this stage. */
export type PinsMode = 'choose' | 'add' | 'remove';

export interface PinsToolState {
  readonly pattern: Pattern;
  readonly mode: PinsMode;
  readonly chosen: string | null;
  /** Pins in doubt, ringed on the sheet. */
  readonly doubtful: readonly Pin[];
}

export interface PinsToolEvents {
  choose(id: string | null): void;
  add(touch: SheetTouch): void;
  remove(id: string): void;
  move(pin: Pin): void;
}

/** Choosing, adding, moving and removing pins on the sheet. */
export class PinsTool implements SheetTool {
  readonly #events: PinsToolEvents;
  #state: PinsToolState;
  /** Made when it is first asked: among very many pins that takes longer than a tap may. */
  #index: PointIndex | null = null;
  #dragged: Pin | null = null;
  /** Where a finger that is still down would add a pin. */
  #aim: Point | null = null;

  constructor(state: PinsToolState, events: PinsToolEvents) {
    this.#state = state;
    this.#events = events;
  }

  update(state: PinsToolState): void {
    if (state.pattern.pins !== this.#state.pattern.pins) this.#index = null;
    this.#state = state;
  }

  tap(touch: SheetTouch): void {
    const { mode } = this.#state;
    const pin = mode === 'add' ? null : this.#pinAt(touch);
    if (mode === 'add') this.#events.add(touch);
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
    if (this.#state.mode === 'add') this.#aim = to.at;
    else this.#dragged = this.#moved(from, to);
  }

  drop(from: SheetTouch, to: SheetTouch, kept: boolean): void {
    const pin = this.#dragged && this.#moved(from, to);
    const adding = this.#aim !== null;
    this.#dragged = null;
    this.#aim = null;
    if (kept && adding) this.#events.add(to);
    if (kept && pin) this.#events.move(pin);
  }

  draw(overlay: Overlay): void {
    const { chosen, doubtful, pattern } = this.#state;
    for (const pin of doubtful) ring(overlay, pin, 9, '#a35a00', [4, 3]);
    const pin = this.#dragged ?? pattern.pins.find(({ id }) => id === chosen);
    if (pin) ring(overlay, pin, 13, '#1c5d5a', []);
    for (const one of [this.#dragged, this.#aim]) if (one) dot(overlay, one);
  }

  #pinAt({ at, reach }: SheetTouch): Pin | null {
    this.#index ??= new PointIndex(this.#state.pattern.pins);
    const index = this.#index.nearest(at, reach);
    return index === null ? null : this.#state.pattern.pins[index]!;
  }

  #moved(from: SheetTouch, to: SheetTouch): Pin | null {
    const pin = this.#state.pattern.pins.find(({ id }) => id === this.#state.chosen);
    return pin ? { ...pin, x: pin.x + to.at.x - from.at.x, y: pin.y + to.at.y - from.at.y } : null;
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
