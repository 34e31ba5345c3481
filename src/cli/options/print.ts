import { type PaperSize, paperNamed } from '#base/units/paper.ts';
import { parseLength } from '#base/units/parse-length.ts';
import type { PrintWish } from '#jobs/print/print.ts';
import { badOption } from './bad-option.ts';
import { lengthIn } from './length.ts';
import { needed } from './needed.ts';

/** The flags of `print`. */
export interface PrintFlags {
  readonly output?: string;
  readonly json?: true;
  readonly way?: 'through' | 'film';
  readonly paper?: PaperSize;
  readonly film?: 'blue' | 'grey' | 'none';
  readonly preview?: string;
  readonly markings?: 'drawn' | 'paper';
  readonly mark?: 'dot' | 'ring' | 'cross';
  readonly hole?: number;
  readonly margin?: number;
  readonly overlap?: number;
  readonly only?: readonly string[];
  readonly printer?: string;
  readonly date?: string;
  readonly dpi: number;
}

/** `--paper A4`. */
export const paper = (text: string): PaperSize =>
  paperNamed(text) ?? badOption('--paper', text, 'a size such as A4, A3, Letter, Legal or Tabloid');

/** An option that takes a length. */
export const lengthOf =
  (option: string, example: string) =>
  (text: string): number =>
    lengthIn(text) ?? badOption(option, text, `a length such as ${example}`);

/** `--ink-spread 0.1mm`: what the strip on the calibration sheet can show. */
export function inkSpread(text: string): number {
  const spread = parseLength(text);
  const fits = spread.ok && spread.value >= 0 && spread.value <= 0.3;
  return fits ? spread.value : badOption('--ink-spread', text, 'a width from 0 to 0.3 mm, such as 0.1mm');
}

/** What something is called: some letters, and not too many for a line on paper. */
export const nameOf =
  (option: string) =>
  (text: string): string =>
    text.trim() !== '' && text.length <= 200
      ? text.trim()
      : badOption(option, text, 'a name of at most 200 letters');

/** `--date 2026-03-14`. */
export const date = (text: string): string =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text))
    ? text
    : badOption('--date', text, 'a day as year-month-day, such as 2026-03-14');

/** An option that takes one of a few words. */
export const oneOf =
  <Word extends string>(option: string, words: readonly Word[]) =>
  (text: string): Word =>
    words.find((word) => word === text.toLowerCase()) ?? badOption(option, text, words.join(' or '));

/** What the flags wish for; the way and the paper are asked for, since nobody can guess them. */
export function wishOf(flags: PrintFlags): Omit<PrintWish, 'typeface'> {
  const way = needed(
    '--way',
    flags.way,
    '"through" to prick through the paper, or "film" to stick it on the card under film',
  );
  const size = needed('--paper', flags.paper, 'the size of the paper in your printer, such as A4 or Letter');
  if (flags.preview !== undefined && way !== 'film') {
    badOption(
      '--preview',
      flags.preview,
      'it only with --way film: nothing lies over a sheet that is pricked through',
    );
  }
  const { film, date, only, overlap, margin, mark, hole } = flags;
  return {
    way,
    paper: size,
    ...(film && { film }),
    ...(date && { date }),
    ...(only && { only }),
    ...(overlap !== undefined && { overlap }),
    ...(margin !== undefined && { margins: { top: margin, right: margin, bottom: margin, left: margin } }),
    hole: { ...(mark && { mark }), ...(hole !== undefined && { diameter: hole }) },
  };
}
