/**
 * The rows of the workers: pairs of a left and a right pin, one row from each to the next on the other edge. Where one
 * edge is longer, round the outside of a bend, its pins share one of the other's. Both numbers never fall from row to
 * row. `left` and `right` are the places of the pins along the middle line, rising; in a closed band the rows go once
 * round, `round` being the length of the way.
 */
export function workersRows(
  left: readonly number[],
  right: readonly number[],
  round: number | null,
): readonly (readonly [number, number])[] {
  if (left.length === 0 || right.length === 0) return [];
  const reach = (pins: readonly number[], k: number): number =>
    k < pins.length ? pins[k]! : round !== null && k === pins.length ? pins[0]! + round : Infinity;
  const rows: [number, number][] = [];
  let [i, j] = [0, 0];
  for (;;) {
    const isRound = round !== null && i === left.length && j === right.length;
    if (isRound) return rows;
    rows.push([i % left.length, j % right.length]);
    const [nextLeft, nextRight] = [reach(left, i + 1), reach(right, j + 1)];
    if (nextLeft === Infinity && nextRight === Infinity) return rows;
    if (nextLeft <= nextRight) i++;
    else j++;
  }
}
