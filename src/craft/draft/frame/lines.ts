import type { Drafting } from '../drafting.ts';

/** Working lines between pins that stand, each drawn once, whichever way round it is asked for. */
export class Lines {
  readonly #drafting: Drafting;
  readonly #drawn = new Set<string>();

  constructor(drafting: Drafting) {
    this.#drafting = drafting;
  }

  draw(from: string, to: string): void {
    const id = `${from}-${to}`;
    if (from === to || !this.#drafting.has(from) || !this.#drafting.has(to)) return;
    if (this.#drawn.has(id) || this.#drawn.has(`${to}-${from}`)) return;
    this.#drawn.add(id);
    this.#drafting.mark({ id, kind: 'line', from: { pin: from }, to: { pin: to } });
  }

  chain(pins: readonly string[]): void {
    for (let k = 1; k < pins.length; k++) this.draw(pins[k - 1]!, pins[k]!);
  }
}
