/**
 * A closed tour through places 0 to n - 1, kept in an array. Turning a stretch round turns the shorter side in the array:
 * of the tour as a circle both come to the same, seen from the other side. Every turn is written down, so that it can be
 * taken back.
 */
export class Tour {
  readonly #order: Int32Array;
  readonly #at: Int32Array;
  /** Whether "on" runs down the array. */
  #down = false;
  #log = new Int32Array(64);
  #logged = 0;

  /** Takes the array over. */
  constructor(order: Int32Array) {
    this.#order = order;
    this.#at = new Int32Array(order.length);
    for (let at = 0; at < order.length; at++) this.#at[order[at]!] = at;
  }

  get size(): number {
    return this.#order.length;
  }

  next(place: number): number {
    return this.#down ? this.#below(place) : this.#above(place);
  }

  previous(place: number): number {
    return this.#down ? this.#above(place) : this.#below(place);
  }

  /** Whether `place` comes on the way on from `from` to `to`, both counted in. */
  isBetween(from: number, place: number, to: number): boolean {
    const at = this.#at;
    const a = this.#down ? at[to]! : at[from]!;
    const b = at[place]!;
    const c = this.#down ? at[from]! : at[to]!;
    return a <= c ? a <= b && b <= c : b >= a || b <= c;
  }

  /** Looks at the tour the other way round. */
  mirror(): void {
    this.#down = !this.#down;
  }

  /** How many places move in the array when the stretch that leads on from `from` to `to` is turned. */
  moved(from: number, to: number): number {
    const ahead = this.#down ? this.#at[from]! - this.#at[to]! : this.#at[to]! - this.#at[from]!;
    const length = (ahead >= 0 ? ahead : ahead + this.#order.length) + 1;
    return 2 * length <= this.#order.length ? length : this.#order.length - length;
  }

  /** Turns round the stretch that leads on from `from` to `to`. */
  turn(from: number, to: number): void {
    const size = this.#order.length;
    const first = this.#at[this.#down ? to : from]!;
    const last = this.#at[this.#down ? from : to]!;
    const length = (last >= first ? last - first : last - first + size) + 1;
    if (2 * length <= size) this.#write(first, last, false);
    else this.#write(last + 1 === size ? 0 : last + 1, first === 0 ? size - 1 : first - 1, true);
  }

  /** A mark of how far the turns have come. */
  get turns(): number {
    return this.#logged;
  }

  /** Takes turns back, to the mark. */
  takeBack(mark: number): void {
    while (this.#logged > mark) {
      const last = this.#log[--this.#logged]!;
      const first = this.#log[--this.#logged]!;
      if (first < 0) this.#down = !this.#down;
      this.#reverse(first < 0 ? ~first : first, last);
    }
  }

  /** Lets the turns stand for good. */
  keep(): void {
    this.#logged = 0;
  }

  /** The places in their order, from `start` on. */
  from(start: number): Int32Array {
    const order = new Int32Array(this.size);
    for (let at = 0, place = start; at < order.length; at++, place = this.next(place)) order[at] = place;
    return order;
  }

  #above(place: number): number {
    const at = this.#at[place]! + 1;
    return this.#order[at === this.#order.length ? 0 : at]!;
  }

  #below(place: number): number {
    const at = this.#at[place]!;
    return this.#order[at === 0 ? this.#order.length - 1 : at - 1]!;
  }

  #write(first: number, last: number, other: boolean): void {
    if (other) this.#down = !this.#down;
    this.#reverse(first, last);
    if (this.#logged + 2 > this.#log.length) {
      const longer = new Int32Array(2 * this.#log.length);
      longer.set(this.#log);
      this.#log = longer;
    }
    this.#log[this.#logged++] = other ? ~first : first;
    this.#log[this.#logged++] = last;
  }

  #reverse(first: number, last: number): void {
    const order = this.#order;
    const at = this.#at;
    const size = order.length;
    let swaps = ((last >= first ? last - first : last - first + size) + 1) >> 1;
    for (let low = first, high = last; swaps > 0; swaps--) {
      const left = order[low]!;
      const right = order[high]!;
      order[low] = right;
      at[right] = low;
      order[high] = left;
      at[left] = high;
      low = low + 1 === size ? 0 : low + 1;
      high = high === 0 ? size - 1 : high - 1;
    }
  }
}
