import type { LengthTrouble } from '#base/units/parse-length.ts';
import { quoted } from './quoted.ts';

/** Why a typed length was not understood, and how to type it. */
export function lengthTroubleInWords(trouble: LengthTrouble): string {
  switch (trouble.kind) {
    case 'empty':
      return 'No length was typed. Type one such as 12.5, 12,5 mm, 3/8 in or 1 1/2".';
    case 'not-a-length':
      return `${quoted(trouble.text)} is not a length. Type one such as 12.5, 12,5 mm, 3/8 in or 1 1/2".`;
    case 'two-marks':
      return `${quoted(trouble.text)} has more than one point or comma. Either is taken as the decimal mark: type it once, and nothing between thousands.`;
    case 'unknown-unit':
      return `${quoted(trouble.unit)} is not a unit that is known here. Use mm, cm, in or ".`;
  }
}
