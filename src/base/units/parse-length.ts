import { MM_PER_INCH } from './length.ts';

const MM_PER_UNIT: Readonly<Record<string, number>> = {
  '': 1,
  mm: 1,
  cm: 10,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  '″': MM_PER_INCH,
};

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/**
 * A length as people write it, in millimetres: `12.5`, `12,5 mm`, `1.25cm`, `3 1/8 in`, `½"`. Point and comma are both
 * the decimal mark and nothing ever groups thousands, so that no length comes out a thousand times too large.
 * Null where the text is no length.
 */
export function parseLength(text: string): number | null {
  const plain = text.trim().replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${FRACTION_SIGNS[sign]}`);
  const found = /^(-?)\s*(\d*(?:[.,]\d+)?)\s*(?:(\d+)\s*\/\s*(\d+))?\s*([a-z"″]*)$/i.exec(plain);
  if (found === null) return null;
  const [, sign = '', whole = '', above = '', below = '', unit = ''] = found;
  const factor = Object.hasOwn(MM_PER_UNIT, unit.toLowerCase()) ? MM_PER_UNIT[unit.toLowerCase()] : undefined;
  if (factor === undefined || (whole === '' && above === '') || Number(below || 1) === 0) return null;
  // '3 1/8' is three and an eighth, '3.5 1/8' is nothing that anyone means.
  if (above !== '' && !/^\d*$/.test(whole)) return null;
  const number = Number(whole.replace(',', '.') || 0) + (above === '' ? 0 : Number(above) / Number(below));
  return (sign === '-' ? -number : number) * factor;
}
