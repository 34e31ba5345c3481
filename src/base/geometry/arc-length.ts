import { integrate } from './curve.ts';

/**
 * Length along a curve, both ways: from the parameter to the length and back. `speed` is how fast the place moves with
 * the parameter, mm; it may not be negative.
 */
export class ArcLength {
  readonly #speed: (t: number) => number;
  readonly #from: number;
  readonly #width: number;
  /** Length to the beginning of each piece, and to the end of the last. */
  readonly #lengths: Float64Array;

  /** `pieces` is how many the range is cut into; a whole number of them to each span that is smooth in itself. */
  constructor(speed: (t: number) => number, from: number, to: number, pieces: number) {
    this.#speed = speed;
    this.#from = from;
    this.#width = (to - from) / pieces;
    this.#lengths = new Float64Array(pieces + 1);
    for (let k = 0; k < pieces; k++) {
      const start = from + k * this.#width;
      this.#lengths[k + 1] = this.#lengths[k]! + integrate(speed, start, start + this.#width);
    }
  }

  get total(): number {
    return this.#lengths[this.#lengths.length - 1]!;
  }

  lengthTo(t: number): number {
    const piece = this.#pieceOf((t - this.#from) / this.#width);
    const start = this.#from + piece * this.#width;
    return this.#lengths[piece]! + integrate(this.#speed, start, t);
  }

  /** The parameter at which the length is `length`, found by Newton's method kept between bounds. */
  parameterAt(length: number): number {
    const piece = this.#pieceAt(length);
    const start = this.#from + piece * this.#width;
    const wanted = length - this.#lengths[piece]!;
    const whole = this.#lengths[piece + 1]! - this.#lengths[piece]!;
    if (whole === 0) return start;
    let [low, high] = [start, start + this.#width];
    let t = start + (this.#width * wanted) / whole;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const miss = integrate(this.#speed, start, t) - wanted;
      if (Math.abs(miss) <= CLOSE * whole) break;
      if (miss > 0) high = t;
      else low = t;
      const next = t - miss / this.#speed(t);
      t = next > low && next < high ? next : (low + high) / 2;
    }
    return t;
  }

  readonly #pieceOf = (place: number): number =>
    Math.max(0, Math.min(this.#lengths.length - 2, Math.floor(place)));

  #pieceAt(length: number): number {
    let [low, high] = [0, this.#lengths.length - 2];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#lengths[middle]! <= length) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

const MOST_ROUNDS = 60;
/** A miss this small a part of a piece is none. */
const CLOSE = 1e-11;
