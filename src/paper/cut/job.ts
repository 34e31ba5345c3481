import { type Affine, applyAffine, compose, translation } from '#base/geometry/affine.ts';
import { boxOf, growBox, heightOf, joinBoxes, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { movePath } from '../drawing/move.ts';
import { type Path, parallelOf } from '../drawing/path.ts';
import { type CutDrawing, type CutLayer, type CutLine, cutLayers } from './drawing.ts';
import { engraving } from './engraving.ts';
import { holeNotes } from './hole-notes.ts';
import { drawnForOpening, drawnForPiece, openingOf } from './kerf.ts';
import { cutLines } from './lines.ts';
import { withoutCoincident } from './merge.ts';
import { boxOfLines, moveLine } from './move.ts';
import {
  type CutNote,
  type CutOptions,
  type CutTrouble,
  cutOptionOutOfRange,
  patternUncuttable,
} from './options.ts';
import { outlineWithTabs } from './tabs.ts';
import { TARGET_ROOM, targetMarks, targetPlaces } from './targets.ts';
import { leastWeb, usualSpacing } from './web.ts';

/** A pattern laid out for a machine. Lengths in mm, from the top left of its frame, y down. */
export interface CuttingJob {
  /** Holes, engraving, outline and targets of the card. */
  readonly card: CutDrawing;
  /** The film's outline in the very same frame, where it was asked for. */
  readonly film: CutDrawing | null;
  /** The finished hole, and the circle that the file draws for it. */
  readonly hole: number;
  readonly drawn: number;
  /** Centres of the holes in the order of the file. */
  readonly holes: readonly Point[];
  /** For each of them, its pin by index. */
  readonly pins: readonly number[];
  readonly targets: readonly Point[];
  /** From the pattern's mm to the frame's. */
  readonly toFrame: Affine;
  readonly notes: readonly CutNote[];
}

/** Lays a pattern out for a machine, from the top left of a frame that holds it. */
export function cuttingJob(pattern: Pattern, options: CutOptions): Result<CuttingJob, CutTrouble> {
  const trouble = patternUncuttable(pattern) ?? cutOptionOutOfRange(options);
  if (trouble) return failed(trouble);
  const { hole, kerf, card: wish } = options;
  const drawn = drawnForOpening(hole, kerf);
  const turn: Affine = options.mirror ? { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 } : translation(0, 0);
  const kept = withoutCoincident(pattern.pins);
  const places = kept.map((pin) => applyAffine(turn, pattern.pins[pin]!));
  const burnt = openingOf(drawn, kerf);
  const spacing = usualSpacing(places, burnt + leastWeb(options.cardThickness));
  if (places.length > 1 && spacing <= burnt) {
    return failed({ kind: 'cut-hole-over-spacing', hole: burnt, spacing });
  }
  const engraved = options.engrave ? engraving(pattern, options.typeface, hole) : { lines: [], notes: [] };
  const etched = engraved.lines.map((line) => moveLine(line, turn));
  // A hole comes out as `burnt` wherever the file draws less of it.
  const finished = joinBoxes(growBox(boxOf(places), burnt / 2), boxOfLines(etched));
  const inked = joinBoxes(growBox(boxOf(places), (drawn || POINT_ROOM) / 2), boxOfLines(etched));
  const margin = wish?.margin ?? CARD_MARGIN;
  const cardAway = drawnForPiece(2 * margin, kerf) / 2;
  const filmAway = margin + FILM_MARGIN;
  const reached = [
    wish ? growBox(finished, cardAway) : inked,
    options.film ? growBox(finished, filmAway) : inked,
  ];
  const content = reached.reduce(joinBoxes, inked);
  const frame = options.ref ? growBox(content, TARGET_ROOM) : content;
  const toOrigin = translation(-frame.left, -frame.top);
  const toFrame = compose(toOrigin, turn);
  const size = { width: widthOf(frame), height: heightOf(frame) };
  const holes = places.map((place) => applyAffine(toOrigin, place));
  const order = options.order(holes);
  const around = (away: number): Path => movePath(parallelOf(finished, away), toOrigin);
  const outline = wish
    ? cardOutline(around(cardAway), wish.tabs, holes, burnt / 2)
    : { lines: [], notes: [] };
  const targets = options.ref
    ? targetPlaces({ left: 0, top: 0, right: size.width, bottom: size.height })
    : [];
  const layers: Record<CutLayer, readonly CutLine[]> = {
    REF: targets.flatMap(targetMarks).flatMap((mark) => cutLines(mark, options.typeface)),
    ENGRAVE: etched.map((line) => moveLine(line, toOrigin)),
    HOLES: order.map((k) => ({ kind: 'circle', at: holes[k]!, diameter: drawn })),
    INNER: [],
    OUTLINE: outline.lines,
  };
  return done({
    card: { ...size, layers: chosen(layers, options.only) },
    film: options.film ? { ...size, layers: { OUTLINE: [{ kind: 'path', path: around(filmAway) }] } } : null,
    hole,
    drawn,
    holes: order.map((k) => holes[k]!),
    pins: order.map((k) => kept[k]!),
    targets,
    toFrame,
    notes: [
      ...(pattern.scale.from === 'none' ? [{ kind: 'scale-unproved' } as const] : []),
      ...holeNotes(pattern, options, kept, places, drawn),
      ...engraved.notes,
      ...(wish && wish.margin < leastWeb(options.cardThickness)
        ? [{ kind: 'card-inside-holes', margin: wish.margin } as const]
        : []),
      ...outline.notes,
    ],
  });
}

/** Film is cut a little larger than the card so that it folds over (common practice, no source; the figures are ours). */
const CARD_MARGIN = 10;
const FILM_MARGIN = 7;

/** A point has no size; files that show it as a short line need this much room for it, mm. */
const POINT_ROOM = 0.1;

function cardOutline(
  path: Path,
  tabs: NonNullable<CutOptions['card']>['tabs'],
  holes: readonly Point[],
  reach: number,
): { lines: CutLine[]; notes: CutNote[] } {
  if (!tabs) return { lines: [{ kind: 'path', path }], notes: [] };
  const { paths, tabs: made } = outlineWithTabs(path, tabs, holes, reach);
  return {
    lines: paths.map((piece) => ({ kind: 'path', path: piece })),
    notes: made < tabs.count ? [{ kind: 'tabs-left-out', wanted: tabs.count, made }] : [],
  };
}

/** Those layers that were asked for and have lines. */
const chosen = (
  layers: Readonly<Record<CutLayer, readonly CutLine[]>>,
  only: readonly CutLayer[] = cutLayers,
): CutDrawing['layers'] =>
  Object.fromEntries(only.flatMap((layer) => (layers[layer].length ? [[layer, layers[layer]]] : [])));
