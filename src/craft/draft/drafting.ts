import type { Point } from '#base/geometry/point.ts';
import type { Area, Mark, Pattern, Pin, Run } from '#pattern/pattern.ts';

/**
 * A pattern while it is drafted: pins, runs, marks and areas gathered in order. Ids say where in the recipe a record
 * belongs (for example `g3.4`: ground, column 3, row 4), so that they stay the same when a figure is changed.
 */
export class Drafting {
  readonly #pins = new Map<string, Pin>();
  readonly #runs: Run[] = [];
  readonly #marks: Mark[] = [];
  readonly #areas: Area[] = [];

  get pinCount(): number {
    return this.#pins.size;
  }

  has(id: string): boolean {
    return this.#pins.has(id);
  }

  /** Sets a pin and gives its id back. Throws where the id is taken: two pins cannot stand for one. */
  pin(id: string, { x, y }: Point): string {
    if (this.#pins.has(id)) throw new RangeError(`Drafting: pin ${id} is set twice`);
    this.#pins.set(id, { id, x, y });
    return id;
  }

  placeOf(id: string): Point {
    const pin = this.#pins.get(id);
    if (!pin) throw new RangeError(`Drafting: there is no pin ${id}`);
    return pin;
  }

  run(run: Run): void {
    this.#runs.push(run);
  }

  mark(mark: Mark): void {
    this.#marks.push(mark);
  }

  area(area: Area): void {
    this.#areas.push(area);
  }

  /** What was drafted, with the parts that the recipe's kind adds. */
  pattern(parts: Pick<Pattern, 'sizes'> & Partial<Pick<Pattern, 'repeat'>>): Pattern {
    return {
      unit: 'mm',
      about: {},
      pins: [...this.#pins.values()],
      runs: this.#runs,
      marks: this.#marks,
      areas: this.#areas,
      scale: { from: 'drafted' },
      ...parts,
    };
  }
}
