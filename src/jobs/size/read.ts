import { parseLength } from '#base/units/parse-length.ts';
import { type Copier, usualCopier } from '#craft/size/copier.ts';
import type { FitTarget } from './wish.ts';

/** A number with a point or a comma; null for anything else. */
export const readNumber = (text: string): number | null =>
  /^\d{1,6}([.,]\d{1,6})?$/.test(text) ? Number(text.replace(',', '.')) : null;

/** `71%`, `71 %`, `71` or `0.71`, as a factor above nought; null for anything else. */
export function readShare(text: string): number | null {
  const percent = text.trim().endsWith('%');
  const number = readNumber(text.replace('%', '').trim());
  if (number === null || number <= 0) return null;
  // 71 for 71 %, and 0.71 for the same; nobody asks for a pattern 71 times as large.
  return percent || number > 10 ? number / 100 : number;
}

/** `28/cm`, `28` or `71/in`: wraps in a centimetre; null for anything else, and for more or less than any thread has. */
export function readWraps(text: string): number | null {
  const [, figures = '', unit = 'cm'] =
    /^([\d.,]+)\s*(?:(?:\/|per|a|an|wraps)\s*)*(cm|in|inch)?$/i.exec(text.trim()) ?? [];
  const number = readNumber(figures);
  const perCm = number === null ? Number.NaN : unit.toLowerCase() === 'cm' ? number : number / 2.54;
  return perCm >= 1 && perCm <= 200 ? perCm : null;
}

/** `1.5 repeats` or `40mm`: what both corners of a side take of it; null for anything else. */
export function readCorners(text: string): FitTarget['corners'] | null {
  const repeats = /^([\d.,]+)\s*repeats?$/i.exec(text.trim())?.[1];
  const many = repeats === undefined ? null : readNumber(repeats);
  if (many !== null) return { repeats: many };
  const mm = parseLength(text);
  return mm.ok && mm.value >= 0 && repeats === undefined ? { mm: mm.value } : null;
}

/** `50-200%`: what a photocopier can be set to; null for anything else. */
export function readCopier(text: string): Copier | null {
  const [, from = '', to = ''] = /^(\d+)\s*%?\s*(?:-|\u2013|to|\.\.)\s*(\d+)\s*%?$/.exec(text.trim()) ?? [];
  const [least, most] = [readNumber(from), readNumber(to)];
  return least === null || most === null || least < 1 || least >= 100 || most <= 100 || most > 1000
    ? null
    : { ...usualCopier, least, most };
}
