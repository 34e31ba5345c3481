import { type Film, noFilm } from '#base/colour/film.ts';
import { type Box, growBox, joinBoxes } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Area, Pattern, Stitch } from '#pattern/pattern.ts';
import { boxOfMarks } from '../drawing/box.ts';
import type { Colour, InkMark, Text } from '../drawing/mark.ts';
import { polyline } from '../drawing/path.ts';
import type { PaperNote } from '../note.ts';
import { textLine } from '../type/lettering.ts';
import { ink, quiet, smallBold } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';
import { type HoleStyle, holeDiameters, holeMarks } from './holes.ts';
import { LabelPlacer } from './labels.ts';
import { drawMarking, type MarkingStyle } from './markings.ts';
import { allPlaces, placesOf } from './places.ts';
import { stitchNames, tintUnder, wantedTint } from './tints.ts';

/** All ink of a pattern in its own mm, before it is laid on any sheet. */
export interface PatternInk {
  /** One for each pin, in the pattern's order. */
  readonly holes: readonly InkMark[];
  readonly tints: readonly InkMark[];
  readonly markings: readonly InkMark[];
  readonly box: Box;
  /** What the tints and signs mean. */
  readonly key: readonly KeyEntry[];
  readonly notes: readonly PaperNote[];
}

export interface KeyEntry {
  readonly sign: 'tint' | 'gimp' | 'plait' | 'picot';
  readonly colour: Colour;
  readonly words: string;
}

export interface InkOptions {
  readonly typeface: Typeface;
  readonly hole: HoleStyle;
  readonly spread: number;
  readonly film: Film;
  /** Width of working lines, mm. */
  readonly line: number;
}

export const GIMP_COLOUR: Colour = '#b3b6c8';

/** Draws the pattern once, for all of its sheets. */
export function drawPattern(pattern: Pattern, options: InkOptions): PatternInk {
  const { diameters, notes } = holeDiameters(pattern.pins, options.hole.diameter);
  const holes = holeMarks(pattern.pins, diameters, options.hole.mark, options.spread, ink);
  const areas = drawAreas(pattern, options.film);
  const drawn = drawMarks(pattern, {
    typeface: options.typeface,
    line: options.line,
    colour: ink,
    gimp: GIMP_COLOUR,
    clearOfHole: options.hole.diameter / 2 + 0.25,
  });
  const placer = new LabelPlacer(new PointIndex(pattern.pins), options.hole.diameter / 2);
  const labels = placeWords(placer, [...drawn.words, ...areaNames(areas.named, options.typeface)]);
  const markings = [...drawn.ink, ...labels.words];
  return {
    holes,
    tints: areas.tints,
    markings,
    box: joinBoxes(boxOfMarks(holes), joinBoxes(boxOfMarks(areas.tints), boxOfMarks(markings))),
    key: [...areas.key, ...keyOfMarks(pattern)],
    notes: [...notes, ...areas.notes, ...drawn.notes, ...labels.notes],
  };
}

interface DrawnAreas {
  readonly tints: InkMark[];
  readonly named: { readonly area: Area; readonly box: Box }[];
  readonly key: KeyEntry[];
  readonly notes: PaperNote[];
}

function drawAreas(pattern: Pattern, film: Film): DrawnAreas {
  const placeOf = placesOf(pattern);
  const drawn: DrawnAreas = { tints: [], named: [], key: [], notes: [] };
  const shown = new Map<Colour, Colour>();
  const lost: string[] = [];
  const changed = new Map<Colour, string[]>();
  for (const area of pattern.areas) {
    const corners = allPlaces(area.outline, placeOf);
    if (!corners) {
      lost.push(area.id);
      continue;
    }
    const wanted = wantedTint(area);
    const colour = wanted && (shown.get(wanted) ?? tintUnder(wanted, film));
    const areaMarks = areaInk(corners, colour);
    if (wanted && colour) {
      shown.set(wanted, colour);
      if (colour !== wanted && area.tint !== undefined && film !== noFilm) {
        changed.set(wanted, [...(changed.get(wanted) ?? []), area.id]);
      }
      addToKey(drawn.key, colour, area.stitch);
    }
    drawn.tints.push(...areaMarks);
    drawn.named.push({ area, box: boxOfMarks(areaMarks) });
  }
  if (lost.length) drawn.notes.push({ kind: 'marks-without-pin', marks: lost });
  for (const [from, areas] of changed) {
    drawn.notes.push({ kind: 'tint-changed', areas, from, to: shown.get(from)! });
  }
  return drawn;
}

/** The tint of an area, where it has one, and its outline. */
export function areaInk(corners: readonly Point[], tint: Colour | undefined): InkMark[] {
  const path = polyline(corners, true);
  const line: InkMark = { kind: 'stroke', role: 'tint', path, width: 0.2, colour: quiet };
  return tint ? [{ kind: 'fill', role: 'tint', path, colour: tint }, line] : [line];
}

function addToKey(key: KeyEntry[], colour: Colour, stitch: Stitch | undefined): void {
  const words = stitch ? stitchNames[stitch] : 'no stitch given';
  if (!key.some((entry) => entry.colour === colour && entry.words === words)) {
    key.push({ sign: 'tint', colour, words });
  }
}

function drawMarks(
  pattern: Pattern,
  style: MarkingStyle,
): { ink: InkMark[]; words: Text[]; notes: PaperNote[] } {
  const placeOf = placesOf(pattern);
  const drawn: { ink: InkMark[]; words: Text[]; notes: PaperNote[] } = { ink: [], words: [], notes: [] };
  const lost: string[] = [];
  for (const mark of pattern.marks) {
    const marking = drawMarking(mark, placeOf, style);
    if (!marking) lost.push(mark.id);
    else {
      drawn.ink.push(...marking.ink);
      drawn.words.push(...marking.words);
    }
  }
  if (lost.length) drawn.notes.push({ kind: 'marks-without-pin', marks: lost });
  // Thick gimp lines first, so that the fine lines stay on top of them.
  drawn.ink.sort((one, other) => Number(other.role === 'gimp') - Number(one.role === 'gimp'));
  return drawn;
}

/** Names of areas, from the middle of each. */
const areaNames = (named: DrawnAreas['named'], typeface: Typeface): Text[] =>
  named.flatMap(({ area, box }) =>
    area.name
      ? [
          textLine(typeface, area.name, smallBold, {
            at: { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 + 1.1 },
            align: 'middle',
            role: 'marking',
          }),
        ]
      : [],
  );

function placeWords(placer: LabelPlacer, words: readonly Text[]): { words: Text[]; notes: PaperNote[] } {
  const placed: Text[] = [];
  const labels: string[] = [];
  for (const text of words) {
    const found = placer.place(text);
    if (found) placed.push(found);
    else labels.push(text.text);
  }
  return { words: placed, notes: labels.length ? [{ kind: 'labels-left-out', labels }] : [] };
}

const keyOfMarks = ({ marks }: Pattern): KeyEntry[] => {
  const has = (kind: string): boolean => marks.some((mark) => mark.kind === kind);
  return [
    ...(has('gimp') ? [{ sign: 'gimp', colour: GIMP_COLOUR, words: 'gimp' } as const] : []),
    ...(has('plait') ? [{ sign: 'plait', colour: ink, words: 'plait' } as const] : []),
    ...(has('picot') ? [{ sign: 'picot', colour: ink, words: 'picot' } as const] : []),
  ];
};

/** Outlines along which card and film are cut: the film a little larger than the card, so that it folds over. */
export function cuttingBoxes(content: Box, cardMargin: number, filmMargin: number): { card: Box; film: Box } {
  const card = growBox(content, cardMargin);
  return { card, film: growBox(card, filmMargin) };
}
