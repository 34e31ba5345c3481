import { type Box, boxHolds, boxOf, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { boxOfMark } from '../drawing/box.ts';
import type { InkMark } from '../drawing/mark.ts';
import { moveMark } from '../drawing/move.ts';
import { LabelPlacer } from '../ink/labels.ts';
import type { KeyEntry } from '../ink/pattern-ink.ts';
import { boxesOverlap } from '../ink/taken-boxes.ts';
import { CROSS_SIZE, crossesOn, type RegistrationCross, registrationCrosses } from '../tile/crosses.ts';
import { edgeLabels, trimTicks } from '../tile/edges.ts';
import type { Layout, Tile } from '../tile/layout.ts';
import { textLine } from '../type/lettering.ts';
import { accent, guideLetters } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';
import { furniture } from './furniture.ts';
import { keyMarks } from './key.ts';
import type { Sheet, SheetContext, SheetKind } from './sheet.ts';

/** One true-to-scale edition of a pattern: what it shows, and what it says at its head. */
export interface Edition {
  readonly kind: SheetKind;
  readonly title: string;
  readonly advice: string;
  readonly places: readonly Point[];
  readonly holes: readonly InkMark[];
  /** Everything else, in the pattern's mm; cut off at the edges of tiles. */
  readonly others: readonly InkMark[];
  readonly key: readonly KeyEntry[];
  readonly holeReach: number;
}

/** All pages of one edition, `first` being the number of its first page among `total`. */
export function patternPages(
  context: SheetContext,
  edition: Edition,
  layout: Layout,
  first: number,
  total: number,
): Sheet[] {
  const index = new PointIndex(edition.places);
  const crosses = registrationCrosses(layout);
  const boxes = edition.others.map(boxOfMark);
  return layout.tiles.map((tile, k) => {
    const tiled = layout.tiles.length > 1;
    const holes = edition.places.flatMap((at, pin) =>
      boxHolds(grown(tile), at) ? [edition.holes[pin]!] : [],
    );
    const others = edition.others.filter((_, mark) => boxesOverlap(boxes[mark]!, tile.window));
    const blank = edition.kind === 'dots' ? holes.length === 0 : holes.length + others.length === 0;
    const sheet = furniture(context, {
      kind: edition.kind,
      id: `${edition.kind}-${tile.name.toLowerCase()}`,
      title: edition.title,
      advice: blank && tiled ? 'blank, skip: nothing of the pattern lies on this sheet' : edition.advice,
      label: `${tiled ? `sheet ${tile.name}, ` : ''}${first + k} of ${total}`,
      page: `page ${tile.row + 1}-${tile.column + 1} of ${layout.rows} x ${layout.columns}`,
      paper: layout.paper,
    });
    const placed = (mark: InkMark): InkMark => moveMark(mark, tile.toPaper);
    const placer = new LabelPlacer(index, edition.holeReach);
    if (tiled) for (const mark of others) for (const box of inkBoxes(mark)) placer.keepFree(box);
    const shown = crossesOn(tile, crosses);
    for (const cross of shown)
      placer.keepFree(
        growBox({ left: cross.at.x, right: cross.at.x, top: cross.at.y, bottom: cross.at.y }, CROSS_SIZE / 2),
      );
    return {
      kind: edition.kind,
      id: `${edition.kind}-${tile.name.toLowerCase()}`,
      title: `${edition.title}${tiled ? `, sheet ${tile.name}` : ''}`,
      paper: layout.paper,
      marks: [
        ...others.map((mark) => (tiled ? { ...placed(mark), clip: tile.area } : placed(mark))),
        ...sheet.marks,
        ...keyMarks(context.typeface, edition.key, sheet.key),
        ...(tiled ? trimTicks(layout, tile).map(placed) : []),
        ...shown.flatMap((cross) => crossMarks(context.typeface, cross, tile.window)).map(placed),
        ...(tiled ? edgeLabels(context.typeface, layout, tile, placer).map(placed) : []),
        ...holes.map(placed),
      ],
    };
  });
}

/** Where a mark has ink: a long outline has it along its sides and not within them. */
function inkBoxes(mark: InkMark): Box[] {
  if (mark.kind !== 'stroke' || mark.role !== 'outline') return [boxOfMark(mark)];
  const corners = mark.path.flatMap((step) => ('to' in step ? [step.to] : []));
  return corners.map((corner, k) => growBox(boxOf([corner, corners[(k + 1) % corners.length]!]), mark.width));
}

/** A hole on the very edge of a window belongs to it. */
const grown = (tile: Tile): Box => growBox(tile.window, 1e-6);

/** The cross itself, and the letter of an outermost one in the gutter beside it. */
function crossMarks(typeface: Typeface, { at, name }: RegistrationCross, window: Box): InkMark[] {
  const marks: InkMark[] = [
    { kind: 'cross', role: 'guide', at, size: CROSS_SIZE, width: 0.2, turn: 0, colour: accent },
    { kind: 'ring', role: 'guide', at, diameter: CROSS_SIZE / 2, width: 0.2, colour: accent },
  ];
  if (name) {
    const above = at.y < (window.top + window.bottom) / 2;
    const y = above ? window.top - 1.2 : window.bottom + 3.4;
    marks.push(
      textLine(typeface, name, guideLetters, { at: { x: at.x, y }, align: 'middle', role: 'guide' }),
    );
  }
  return marks;
}
