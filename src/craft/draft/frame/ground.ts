import type { Drafting } from '../drafting.ts';
import type { Place } from '../strip/shape.ts';
import type { Cells } from './cells.ts';
import { edgeAt, type FrameLayout, pinAt, placeAt, rowsOf, type Side } from './layout.ts';
import type { Lines } from './lines.ts';

/** Pins of the ground, footside and outlines among them, then its working lines round every corner. */
export function draftGround(drafting: Drafting, layout: FrameLayout, cells: Cells, lines: Lines): void {
  const stands = (side: Side, place: Place): boolean =>
    !cells.isHeld(side, place) || cells.isCentre(side, place);
  for (const side of layout.sides) {
    for (const place of ownPlaces(layout, side)) {
      if (stands(side, place)) drafting.pin(pinAt(layout, side, place), placeAt(layout, side, place));
    }
  }
  for (const side of layout.sides) {
    for (const [i, j] of ownPlaces(layout, side)) {
      if (!stands(side, [i, j])) continue;
      for (const across of [-1, 1]) {
        if (cells.isHeld(side, [i + across / 2, j + 0.5])) continue;
        lines.draw(pinAt(layout, side, [i, j]), pinAt(layout, side, [i + across, j + 1]));
      }
    }
  }
}

/** The places of the ground that belong to a side, row by row. */
function* ownPlaces(layout: FrameLayout, side: Side): Iterable<Place> {
  const [first, last] = rowsOf(layout, side);
  for (let j = first; j <= last; j++) {
    const least = Math.max(
      Math.abs(j % 2),
      side.before === null ? 0 : -j,
      side.after === null ? 0 : j - side.rows + 2,
    );
    const most = edgeAt(layout, side, j);
    for (let i = least; i <= most; i += 2) yield [i, j];
  }
}
