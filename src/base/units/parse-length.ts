import { done, failed, type Result } from '../result.ts';
import { inchesToMm } from './length.ts';

export type LengthUnit = 'mm' | 'cm' | 'in';

/** Why a typed length cannot be understood. Put into sentences by `#jobs/words/length.ts`. */
export type LengthTrouble =
  | { readonly kind: 'empty' }
  | { readonly kind: 'not-a-length'; readonly text: string }
  /** Two decimal marks, or one and a grouping mark: nobody can tell 1.234,5 from 1,234.5 for sure. */
  | { readonly kind: 'two-marks'; readonly text: string }
  | { readonly kind: 'unknown-unit'; readonly unit: string };

/**
 * A length as people type it, in millimetres: `12.5`, `12,5`, `3/8`, `1 1/2"`, `1½ in`, `2,5 cm`. Either mark is the
 * decimal mark and none groups digits, since a grouping mark taken for the other makes a length a thousand times
 * too long. `plain` is the unit where none is typed.
 */
export function parseLength(text: string, plain: LengthUnit = 'mm'): Result<number, LengthTrouble> {
  const typed = text.replace(VULGAR, (fraction) => ` ${fraction.normalize('NFKC')}`).trim();
  const shown = text.trim().slice(0, 40);
  if (typed === '') return failed({ kind: 'empty' });
  if (typed.length > 100) return failed({ kind: 'not-a-length', text: shown });
  const [, sign, figures, unitText] =
    /^([-+\u2212]?)\s*([\d.,/\u2044\s-]*\d[.,]?)\s*(\D*)$/.exec(typed) ?? [];
  if (figures === undefined) return failed({ kind: 'not-a-length', text: shown });
  if ((figures.match(/[.,]/g) ?? []).length > 1) return failed({ kind: 'two-marks', text: shown });
  const number = numberOf(figures.trim());
  if (number === null) return failed({ kind: 'not-a-length', text: shown });
  const unit = unitText ? unitOf(unitText.trim()) : plain;
  if (!unit) return failed({ kind: 'unknown-unit', unit: unitText!.trim().slice(0, 40) });
  const mm = number * MM_PER[unit];
  return done(sign === '-' || sign === '\u2212' ? 0 - mm : mm);
}

const MM_PER: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, in: inchesToMm(1) };

/** Fractions of one character: ¼ ½ ¾, ⅐ to ⅞, ↉. */
const VULGAR = /[\u00bc-\u00be\u2150-\u215e\u2189]/g;

function unitOf(text: string): LengthUnit | undefined {
  const word = text.toLowerCase();
  if (word === 'mm' || word === 'cm') return word;
  // ", the double prime, the quotation marks that a telephone puts for it, and two single ones.
  return /^(?:in|inch|inches|["\u2033\u201c\u201d]|'')$/.test(word) ? 'in' : undefined;
}

/** `12`, `12.5`, `,5`, `3/8`, `1 1/2` or `1-1/2`; null for anything else. */
function numberOf(figures: string): number | null {
  if (/^(?:\d+[.,]?\d*|[.,]\d+)$/.test(figures)) return finite(Number(figures.replace(',', '.')));
  const [, whole, over, under] = /^(?:(\d+)(?:\s+|-))?(\d+)\s*[/\u2044]\s*(\d+)$/.exec(figures) ?? [];
  if (over === undefined || under === undefined) return null;
  const fraction = Number(over) / Number(under);
  // Behind a whole number only a true fraction makes sense: 1 12/8 is a slip of the finger.
  if (whole !== undefined && fraction >= 1) return null;
  return finite(Number(whole ?? 0) + fraction);
}

const finite = (number: number): number | null => (Number.isFinite(number) ? number : null);
