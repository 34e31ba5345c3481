import type { PaperSize } from '#base/units/paper.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import type { FilmName } from '#paper/ink/tints.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { PrintRequest } from '../../../worker/make/print.ts';

/** What a person chose for printing; null where nothing was said, and the usual is taken. Lengths in mm. */
export interface PrintChoices {
  readonly way: 'through' | 'film';
  readonly film: 'blue' | 'grey' | 'none';
  readonly markings: 'drawn' | 'paper';
  readonly mark: 'dot' | 'ring' | 'cross';
  readonly hole: number;
  readonly margin: number;
  readonly overlap: number;
  /** Names of sheets as they were typed: 'A1, B2'. */
  readonly only: string;
  readonly date: string;
  /** The name of a measured printer; '' for none. */
  readonly printer: string;
}

export const usualPrint: PrintChoices = {
  way: 'through',
  film: 'blue',
  markings: 'drawn',
  mark: 'dot',
  hole: 0.6,
  margin: 10,
  overlap: 15,
  only: '',
  date: '',
  printer: '',
};

/** What printing begins with where patterns are looked at under this film. */
export const printUnder = (film: FilmName): PrintChoices =>
  film === 'none' ? usualPrint : { ...usualPrint, way: 'film', film };

/** The choices as the job takes them. `picture` is that of the paper, where the pattern keeps one. */
export function requestOf(
  pattern: Pattern,
  picture: Blob | null,
  paper: PaperSize,
  printer: PrinterProfile | null,
  { way, film, markings, mark, hole, margin, overlap, only, date }: PrintChoices,
): PrintRequest {
  const names = only.split(/[\s,;]+/).filter((name) => name !== '');
  return {
    pattern,
    printer,
    paperPicture: markings === 'paper' ? picture : null,
    wish: {
      way,
      paper,
      ...(way === 'film' && { film }),
      ...(date.trim() && { date: date.trim() }),
      ...(names.length > 0 && { only: names }),
      overlap,
      margins: { top: margin, right: margin, bottom: margin, left: margin },
      hole: { mark, diameter: hole },
    },
  };
}
