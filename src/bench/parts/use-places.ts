import { formatNumber } from '#base/units/format-length.ts';
import { usePreferences } from '../settings/preferences.ts';

/** How a number of a pattern is read: as a length, or as pixels where its scale is not known. */
export function usePlaces(unit: 'mm' | 'px'): (value: number) => string {
  const { shown, decimal } = usePreferences();
  return unit === 'mm' ? shown : (value) => `${formatNumber(value, 1).replace('.', decimal)} px`;
}
