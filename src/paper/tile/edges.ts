import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '../drawing/mark.ts';
import { segment } from '../drawing/path.ts';
import type { LabelPlacer } from '../ink/labels.ts';
import { textLine } from '../type/lettering.ts';
import { accent, guideLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';
import { tileName } from './grid.ts';
import { GUTTER, type Layout, type Tile } from './layout.ts';

/**
 * Ticks where a sheet is cut, in the gutter at both ends of the cut: the left of two neighbours and the upper of two
 * lie on top and are cut. The drawing goes on past the ticks up to the window's edge.
 */
export function trimTicks(layout: Layout, tile: Tile): InkMark[] {
  const { window } = tile;
  const tick = (from: Point, to: Point): InkMark => ({
    kind: 'stroke',
    role: 'guide',
    path: segment(from, to),
    width: 0.2,
    colour: accent,
  });
  const x = layout.cuts.across[tile.column];
  const y = layout.cuts.down[tile.row];
  return [
    ...(x === undefined
      ? []
      : [
          tick({ x, y: window.top - TICK_FAR }, { x, y: window.top - TICK_NEAR }),
          tick({ x, y: window.bottom + TICK_NEAR }, { x, y: window.bottom + TICK_FAR }),
        ]),
    ...(y === undefined
      ? []
      : [
          tick({ x: window.left - TICK_FAR, y }, { x: window.left - TICK_NEAR, y }),
          tick({ x: window.right + TICK_NEAR, y }, { x: window.right + TICK_FAR, y }),
        ]),
  ];
}

/** At each edge that joins another sheet: which one, and which of the two lies on top. */
export function edgeLabels(typeface: Typeface, layout: Layout, tile: Tile, placer: LabelPlacer): InkMark[] {
  return edgesOf(layout, tile).map(({ words, from, to, outside, turn }) => {
    const text = textLine(typeface, words, guideLetters, { at: from, align: 'middle', turn, role: 'guide' });
    const steps = Array.from({ length: 41 }, (_, k) => 0.5 + (k % 2 ? 1 : -1) * Math.ceil(k / 2) * 0.02);
    const along = steps.map((t) => ({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t }));
    return placer.placeAtOneOf(text, along) ?? { ...text, at: outside };
  });
}

const TICK_NEAR = 0.6;
const TICK_FAR = GUTTER - 0.4;

interface Edge {
  readonly words: string;
  /** The middle line of what the two sheets share beyond the cut, for this sheet. */
  readonly from: Point;
  readonly to: Point;
  /** Where the words go when holes leave no room inside. */
  readonly outside: Point;
  readonly turn: number;
}

function edgesOf({ cuts, rows, columns }: Layout, { row, column, window }: Tile): Edge[] {
  const { left, top, right, bottom } = window;
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const upright = (x: number, outside: number, turn: number, words: string): Edge => ({
    words,
    turn,
    from: { x, y: top },
    to: { x, y: bottom },
    outside: { x: outside, y: middle.y },
  });
  const level = (y: number, outside: number, words: string): Edge => ({
    words,
    turn: 0,
    from: { x: left, y },
    to: { x: right, y },
    outside: { x: middle.x, y: outside },
  });
  const onTop = (name: string): string => `joins ${name}: this sheet lies on top, cut between the ticks`;
  const under = (name: string): string => `joins ${name}: this sheet goes underneath`;
  const edges: Edge[] = [];
  if (column > 0) {
    const cut = cuts.across[column - 1]!;
    edges.push(upright((left + cut) / 2 - LIFT, left - 1.2, -Math.PI / 2, under(tileName(row, column - 1))));
  }
  if (column < columns - 1) {
    const cut = cuts.across[column]!;
    edges.push(upright((cut + right) / 2 - LIFT, right + 1.2, Math.PI / 2, onTop(tileName(row, column + 1))));
  }
  if (row > 0) {
    const cut = cuts.down[row - 1]!;
    edges.push(level((top + cut) / 2 + LIFT, top - 1.2, under(tileName(row - 1, column))));
  }
  if (row < rows - 1) {
    const cut = cuts.down[row]!;
    edges.push(level((cut + bottom) / 2 + LIFT, bottom + 3.4, onTop(tileName(row + 1, column))));
  }
  return edges;
}

/** From the middle of letters to their baseline, mm. */
const LIFT = 1.1;
