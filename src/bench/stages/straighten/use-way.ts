import { numberInWords } from '#jobs/words/number.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { usePreferences } from '../../settings/preferences.ts';

/** How long a way on the sheet is, in words: in the person's own unit, or in pixels where the scale is not known. */
export function useWay(unit: Pattern['unit']): (length: number) => string {
  const { shown } = usePreferences();
  return (length) => (unit === 'mm' ? shown(length) : `${numberInWords(length, 1)} px`);
}
