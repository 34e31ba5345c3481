import { PointIndex } from '#base/geometry/point-index.ts';
import type { PrickingPass } from '#pattern/order.ts';
import type { Pin } from '#pattern/pattern.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../sheet/tool.ts';
import { endsOf } from './ends.ts';
import { paintStep } from './paint-step.ts';

export interface PrickToolState {
  /** As they are looked at. */
  readonly pins: readonly Pin[];
  /** The step at hand; null where there is none left. */
  readonly pass: PrickingPass | null;
  readonly done: ReadonlySet<number>;
  readonly large: boolean;
}

/** Shows one step of the guide on the sheet; a touch ticks one of its holes off, or takes the tick back. */
export class PrickTool implements SheetTool {
  readonly #tick: (pin: number) => void;
  #state: PrickToolState;
  #spacing = 1;

  constructor(state: PrickToolState, tick: (pin: number) => void) {
    this.#state = state;
    this.#tick = tick;
    this.#spacing = spacingOf(state.pins);
  }

  update(state: PrickToolState): void {
    if (state.pins !== this.#state.pins) this.#spacing = spacingOf(state.pins);
    this.#state = state;
  }

  /** Distance between neighbours, usually. */
  get spacing(): number {
    return this.#spacing;
  }

  tap({ at, reach }: SheetTouch): void {
    const { pass, pins } = this.#state;
    if (!pass) return;
    const index = new PointIndex(pass.order.map((pin) => pins[pin]!)).nearest(at, reach);
    if (index !== null) this.#tick(pass.order[index]!);
  }

  draw(overlay: Overlay): void {
    const { pins, pass, done, large } = this.#state;
    const size = (large ? 1.5 : 1) * Math.min(11, Math.max(4, 0.3 * this.#spacing * overlay.camera.scale));
    paintStep(overlay, { pins, pass, done, size, ends: pass ? endsOf(pass, pins) : [] });
  }
}

/** The median of how far pins stand from their nearest. */
function spacingOf(pins: readonly Pin[]): number {
  const index = new PointIndex(pins);
  const every = Math.max(1, Math.floor(pins.length / 500));
  const distances = pins
    .flatMap((_, pin) => (pin % every === 0 ? [index.nearestTo(pin, 1e6)] : []))
    .sort((one, other) => one - other);
  return distances[distances.length >> 1] || 1;
}
