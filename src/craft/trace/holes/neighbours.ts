/** How regularly a candidate stands among the pins about it: chance marks rarely do. */
export interface Regularity {
  /** Best fit, 0 to 1, of the candidate as the middle of two neighbours. */
  readonly between: number;
  /** Mean of the two best fits, 0 to 1, of a neighbour as the middle of the candidate and another. */
  readonly onward: number;
  /** How alike its distances to the nearest two neighbours and theirs are, as a ratio 0 to 1. */
  readonly spacing: number;
  /** Distance to the nearest likelier pin, in dot diameters; 3 where none is nearer. */
  readonly apart: number;
}

interface Place {
  readonly column: number;
  readonly row: number;
  /** How likely it is a pin, by itself. */
  readonly likely: number;
}

/** How many of the nearest pins are looked at. */
const NEAREST = 8;
/** A middle may be off by about this share of the distance between neighbours: hand-pricked rows stray. */
const STRAY = 0.15;

export function regularityOf(places: readonly Place[], pins: readonly Place[], apart: number): Regularity[] {
  const cells = new Map<number, number[]>();
  const side = apart * 6;
  const key = (x: number, y: number): number => Math.floor(x / side) * 65536 + Math.floor(y / side);
  pins.forEach(({ column, row }, pin) => {
    const cell = key(column, row);
    const list = cells.get(cell);
    if (list) list.push(pin);
    else cells.set(cell, [pin]);
  });
  return places.map(({ column, row, likely }) => {
    let closest = 3 * apart;
    const near: { x: number; y: number; far: number }[] = [];
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const pin of cells.get(key(column + dx * side, row + dy * side)) ?? []) {
          const x = pins[pin]!.column - column;
          const y = pins[pin]!.row - row;
          const far = Math.hypot(x, y);
          if (far > 0.7 * apart) near.push({ x, y, far });
          if (pins[pin]!.likely > likely && far > 0.3 * apart) closest = Math.min(closest, far);
        }
      }
    }
    near.sort((a, b) => a.far - b.far);
    if (near.length > NEAREST) near.length = NEAREST;
    return { ...judge(near), apart: closest / apart };
  });
}

function judge(near: readonly { x: number; y: number; far: number }[]): Omit<Regularity, 'apart'> {
  let between = Infinity;
  let first = Infinity;
  let second = Infinity;
  for (let a = 0; a < near.length; a++) {
    const one = near[a]!;
    for (let b = 0; b < near.length; b++) {
      if (a === b) continue;
      const two = near[b]!;
      if (b > a) {
        const off = (2 * length(one.x + two.x, one.y + two.y)) / (one.far + two.far);
        between = Math.min(between, off);
      }
      const off = length(two.x - 2 * one.x, two.y - 2 * one.y) / one.far;
      if (off < first) {
        second = first;
        first = off;
      } else if (off < second) second = off;
    }
  }
  return {
    between: likeness(between),
    onward: (likeness(first) + likeness(second)) / 2,
    spacing: near.length > 1 ? near[0]!.far / near[1]!.far : 0,
  };
}

const length = (x: number, y: number): number => Math.sqrt(x * x + y * y);

const likeness = (off: number): number => Math.exp(-((off / (2 * STRAY)) ** 2));
