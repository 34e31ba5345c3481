import { formatBoth } from '#base/units/format-length.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { PaperNote } from '#paper/note.ts';
import type { PrintTrouble } from '#paper/sheet/options.ts';
import { listInWords } from './number.ts';
import { visible } from './quoted.ts';

/** A note in words: what was noticed, and what to do about it. */
export function paperNoteInWords(note: PaperNote): string {
  switch (note.kind) {
    case 'holes-nearly-touch':
      return `${count(note.pins.length, 'hole lies', 'holes lie')} so near a neighbour (closest: ${note.closest.toFixed(2)} mm) that ${note.pins.length === 1 ? 'its mark is' : 'their marks are'} printed smaller: ${some(note.pins)}. Look whether one of them is there twice.`;
    case 'seam-near-holes':
      return `${count(note.pins.length, 'hole lies', 'holes lie')} within 2 mm of a cut between sheets: ${some(note.pins)}. Prick ${note.pins.length === 1 ? 'it' : 'them'} after the sheets are joined.`;
    case 'letters-missing':
      return `The print has no letters for ${note.letters.slice(0, 12).join(' ')}; an empty square stands in their place.`;
    case 'scale-not-proved':
      return 'Nothing vouches for the size of this pattern. Measure a known distance on the first print before pricking.';
    case 'tint-changed':
      return `The tint ${note.from} of ${count(note.areas.length, 'area', 'areas')} would be lost under the film; ${note.to} is printed instead.`;
    case 'not-expressed':
      return `${note.writer} cannot show ${note.what}.`;
    case 'marks-without-pin':
      return `${count(note.marks.length, 'mark or area names', 'marks or areas name')} a pin that is not in the pattern, so ${note.marks.length === 1 ? 'it is' : 'they are'} not drawn: ${some(note.marks)}.`;
    case 'labels-left-out':
      return `There was no free place for ${count(note.labels.length, 'word or number', 'words or numbers')} on the pattern, so ${note.labels.length === 1 ? 'it is' : 'they are'} not printed: ${some(note.labels)}.`;
  }
}

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`;

const some = (names: readonly string[]): string =>
  visible(
    names.length > 8 ? `${names.slice(0, 8).join(', ')} and ${names.length - 8} more` : names.join(', '),
  );

/** Sheets that are not made yet: how they lie, and how many holes each will show. */
export interface SheetsToCome {
  readonly paper: PaperSize;
  readonly columns: number;
  readonly rows: number;
  readonly overlap: number;
  readonly sheets: readonly { readonly name: string; readonly holes: number }[];
  /** How far the pins reach. */
  readonly size: { readonly width: number; readonly height: number };
}

/** How a pattern will lie on its sheets, before they are made. */
export function printPlanInWords(plan: SheetsToCome, way: 'through' | 'film'): string[] {
  const { paper, columns, rows, sheets, overlap, size } = plan;
  const lying = paper.width > paper.height ? 'landscape' : 'upright';
  const blank = sheets.filter(({ holes }) => holes === 0).map(({ name }) => name);
  return [
    `The pins reach ${formatBoth(size.width)} across and ${formatBoth(size.height)} down.`,
    sheets.length === 1
      ? `The pattern fits on one sheet of ${paper.name}, ${lying}.`
      : `The pattern takes ${sheets.length} sheets of ${paper.name}, ${lying}: ${columns} across and ${rows} down. Neighbours share ${formatBoth(overlap)}, and a cover sheet says how they are joined.`,
    ...(blank.length === 0
      ? []
      : [`Blank, skip: ${listInWords(blank)} ${blank.length === 1 ? 'holds' : 'hold'} no hole.`]),
    way === 'through'
      ? `${sheets.length === 1 ? 'It' : 'Each'} is printed twice: dots to prick through, and the marking guide. A pricking guide comes with them.`
      : `${sheets.length === 1 ? 'It is' : 'They are'} complete: dots, markings, and lines to cut card and film along. A pricking guide comes as well.`,
  ];
}

/** What to do with sheets that were made. */
export const printedInWords = (sheets: number): string =>
  `${sheets === 1 ? '1 sheet' : `${sheets} sheets`}. Print at 100 % ("actual size"), and prick nothing before both rulers measure 100 mm.`;

/** Why a pattern cannot be printed as asked, and what to do next. */
export function printTroubleInWords(trouble: PrintTrouble): string {
  switch (trouble.kind) {
    case 'print-scale-unknown':
      return 'Nobody knows how large this pattern is, so it cannot be printed true to scale. Give the scan\u2019s dpi or a known distance on it, and trace it again.';
    case 'print-nothing':
      return 'The pattern holds nothing to print: no pins, no marks, no areas.';
    case 'print-paper-too-small':
      return `${trouble.paper} (${trouble.width} x ${trouble.height} mm) is too small for this sheet and its rulers. Choose A4, Letter or larger.`;
    case 'print-too-many-sheets':
      return `The pattern would take ${trouble.sheets} sheets, and at most ${trouble.most} are printed. Look whether its size is right, or choose larger paper.`;
    case 'print-option':
      return `${optionNames[trouble.option]} of ${trouble.value} mm cannot be printed. It goes from ${trouble.least} to ${trouble.most} mm.`;
    case 'print-no-such-sheet':
      return `There is no sheet ${visible(trouble.sheet)}. The sheets of this pattern are ${some(trouble.sheets)}.`;
  }
}

const optionNames = {
  margin: 'A margin',
  overlap: 'An overlap',
  hole: 'A hole mark',
  'ink-spread': 'An ink spread',
} as const;
