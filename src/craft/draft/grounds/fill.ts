import type { Point } from '#base/geometry/point.ts';
import type { Drafting } from '../drafting.ts';
import type { Ground, GroundPin } from './ground.ts';

/** Where a ground is to stand. */
export interface GroundField {
  /** The places that are looked at, both ends counted; cost grows with their number. */
  readonly columns: readonly [least: number, most: number];
  readonly rows: readonly [least: number, most: number];
  /** Where a place of the lattice lies on the sheet, for example `latticePlace`. */
  readonly place: (i: number, j: number) => Point;
  /** Whether the ground has a pin there; absent where it has one at each of its places. */
  readonly inside?: (point: Point, i: number, j: number) => boolean;
  /**
   * The id of the pin at a place, for example `g3.4`. Where the drafting has that pin already, of a footside say, it
   * stays as it is, and the ground's lines go to it.
   */
  readonly name: (i: number, j: number) => string;
  /** Told of each working line of which one end lacks its pin within the field. */
  readonly cut?: (standing: string, lacking: Point, i: number, j: number) => void;
}

/**
 * Sets the pins of a ground in a field, and the working lines of which both ends stand. Gives the ids of the pins that
 * it set, row by row. A line is named after its two pins, `g3.4-g4.5`.
 */
export function fillGround(drafting: Drafting, ground: Ground, field: GroundField): string[] {
  const set: string[] = [];
  const rows = pinsByRow(ground);
  for (let j = field.rows[0]; j <= field.rows[1]; j++) {
    for (const offset of rows[modulo(j, ground.rows)]!) {
      const first = field.columns[0] + modulo(offset - field.columns[0], ground.columns);
      for (let i = first; i <= field.columns[1]; i += ground.columns) {
        const id = field.name(i, j);
        const point = field.place(i, j);
        if (drafting.has(id) || field.inside?.(point, i, j) === false) continue;
        set.push(drafting.pin(id, point));
      }
    }
  }
  drawLines(drafting, ground, field);
  return set;
}

/** Working lines between pins that stand, of every cell that touches the field. */
function drawLines(drafting: Drafting, ground: Ground, field: GroundField): void {
  const { columns, rows, name } = field;
  const inField = (i: number, j: number) =>
    i >= columns[0] && i <= columns[1] && j >= rows[0] && j <= rows[1];
  for (let top = rows[0] - modulo(rows[0], ground.rows); top <= rows[1]; top += ground.rows) {
    for (
      let left = columns[0] - modulo(columns[0], ground.columns);
      left <= columns[1];
      left += ground.columns
    ) {
      for (const line of ground.lines) {
        const [a, b] = [ground.pins[line.from]!, ground.pins[line.to]!];
        const [i, j] = [left + a.i, top + a.j];
        const [k, l] = [left + line.across * ground.columns + b.i, top + line.down * ground.rows + b.j];
        if (!inField(i, j) || !inField(k, l)) continue;
        const [from, to] = [name(i, j), name(k, l)];
        const [starts, ends] = [drafting.has(from), drafting.has(to)];
        if (starts && ends) {
          drafting.mark({ id: `${from}-${to}`, kind: 'line', from: { pin: from }, to: { pin: to } });
        } else if (starts) field.cut?.(from, field.place(k, l), k, l);
        else if (ends) field.cut?.(to, field.place(i, j), i, j);
      }
    }
  }
}

/** For each row of the cell, the columns of its pins, from the left. */
const pinsByRow = ({ rows, pins }: Ground): readonly (readonly number[])[] =>
  Array.from({ length: rows }, (_, row) =>
    pins
      .filter(({ j }: GroundPin) => j === row)
      .map(({ i }) => i)
      .sort((one, other) => one - other),
  );

const modulo = (value: number, period: number): number => value - period * Math.floor(value / period);
