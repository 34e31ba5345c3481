import type { Box } from '#base/geometry/box.ts';
import type { PaperSize } from '#base/units/paper.ts';
import type { About } from '#pattern/pattern.ts';
import type { InkMark } from '../drawing/mark.ts';
import type { Typeface } from '../type/typeface.ts';

export type SheetKind =
  | 'cover'
  | 'dots'
  | 'marking-guide'
  | 'complete'
  | 'pricking-guide'
  | 'film-preview'
  | 'before-and-after'
  | 'summary'
  | 'test'
  | 'calibration'
  | 'photocopy'
  | 'print-then-cut'
  | 'card-picture'
  | 'reprick-map'
  | 'thread-table'
  | 'cloth-picture';

/** A finished sheet: its paper as it lies, and everything that is on it, in mm from the paper's top left corner. */
export interface Sheet {
  readonly kind: SheetKind;
  /** Short, unlike any other sheet's of the same job, fit for a file name: 'dots-a1'. */
  readonly id: string;
  readonly title: string;
  readonly paper: PaperSize;
  readonly marks: readonly InkMark[];
}

/** Ink-free borders, mm. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** What every sheet of a job prints about itself. */
export interface SheetContext {
  readonly typeface: Typeface;
  readonly about: About;
  readonly margins: Margins;
  readonly revision: string;
  /** As it shall be printed; nothing is printed where it is absent. */
  readonly date?: string;
  /** The printer's correction, as factors for the paper's two axes; 1 and 1 where there is none. */
  readonly correction: { readonly x: number; readonly y: number };
}

/** What one sheet says about itself. */
export interface SheetHeading {
  readonly kind: SheetKind;
  readonly id: string;
  readonly title: string;
  /** What to do with it, in one sentence. */
  readonly advice: string;
  /** Which sheet of how many, for example 'sheet A2, 3 of 8'. */
  readonly label: string;
  /** Page r-c of R x C, where the sheet is a page of a tiled pattern or the only one. */
  readonly page: string;
  readonly paper: PaperSize;
}

/** The part of the paper that may carry ink. */
export const safeBox = (paper: PaperSize, margins: Margins): Box => ({
  left: margins.left,
  top: margins.top,
  right: paper.width - margins.right,
  bottom: paper.height - margins.bottom,
});

/** What a person may say about all sheets of a job. */
export interface SheetOptions {
  readonly typeface: Typeface;
  readonly revision: string;
  readonly date?: string;
  readonly margins?: Partial<Margins>;
  readonly correction?: { readonly x: number; readonly y: number };
}

/** The same with everything filled in: margins of 10 mm, and no correction. */
export const sheetContext = (about: About, options: SheetOptions): SheetContext => ({
  typeface: options.typeface,
  about,
  margins: { top: MARGIN, right: MARGIN, bottom: MARGIN, left: MARGIN, ...options.margins },
  revision: options.revision,
  correction: options.correction ?? { x: 1, y: 1 },
  ...(options.date === undefined ? {} : { date: options.date }),
});

const MARGIN = 10;
