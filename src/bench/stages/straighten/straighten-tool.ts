import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pin } from '#pattern/pattern.ts';
import type { Overlay, SheetTool, SheetTouch } from '../../sheet/tool.ts';
import { drawMoves, drawPins } from './draw-moves.ts';
import { drawChosen, drawMissing, drawPicked, drawStray } from './draw-parts.ts';
import { between, type Taking } from './taking.ts';

export interface StraightenShown {
  /** The pins as they were. */
  readonly pins: readonly Pin[];
  readonly taking: Taking;
  /** How far the pins are on their way, 0 to 1. */
  readonly share: number;
  /** How many times longer than they are the moves are drawn. */
  readonly longer: number;
  readonly chosen: { readonly pins: readonly number[]; readonly joined: boolean } | null;
  /** The missing or stray pin that is spoken of. */
  readonly asked: string | null;
  /** Pins touched for a known distance. */
  readonly picked: readonly string[];
}

export interface StraightenTouched {
  pin(index: number): void;
  asked(id: string): void;
}

/** Shows a proposal over the sheet: pins on their way, their moves, and what is missing or stray. */
export class StraightenTool implements SheetTool {
  #touched: StraightenTouched | null = null;
  #shown: StraightenShown | null = null;
  /** Made at the first touch: looking at a proposal needs none. */
  #index: PointIndex | null = null;

  show(shown: StraightenShown, touched: StraightenTouched): void {
    if (shown.pins !== this.#shown?.pins) this.#index = null;
    this.#shown = shown;
    this.#touched = touched;
  }

  tap({ at, reach }: SheetTouch): void {
    const shown = this.#shown;
    if (!shown) return;
    const { missing } = shown.taking;
    const near = missing.find(({ from, to }) => {
      const place = between(from, to, shown.share);
      return Math.hypot(place.x - at.x, place.y - at.y) <= reach / 2;
    });
    if (near) {
      this.#touched?.asked(near.id);
      return;
    }
    this.#index ??= new PointIndex(shown.pins);
    const index = this.#index.nearest(at, reach);
    if (index !== null) this.#touched?.pin(index);
  }

  draw(overlay: Overlay): void {
    const shown = this.#shown;
    if (!shown) return;
    const { share, longer, taking, pins } = shown;
    // At both ends the sheet itself shows the pins.
    if (share > 0 && share < 1) drawPins(overlay, shown);
    drawMoves(overlay, pins, taking, longer);
    for (const place of taking.missing) drawMissing(overlay, place, share, place.id === shown.asked);
    for (const { id, pin, taken } of taking.stray) {
      drawStray(overlay, between(pins[pin]!, taking.places[pin]!, share), taken, id === shown.asked);
    }
    if (shown.chosen) {
      const places = shown.chosen.pins.map((pin) => between(pins[pin]!, taking.places[pin]!, share));
      drawChosen(overlay, places, shown.chosen.joined);
    }
    const picked = pins.flatMap(({ id }, pin) =>
      shown.picked.includes(id) ? [between(pins[pin]!, taking.places[pin]!, share)] : [],
    );
    drawPicked(overlay, picked);
  }
}
