import type { Preferences } from '../../settings/preferences.ts';

/** What a figure means, with the unit in which this person reads its length: recipes speak of millimetres. */
export const meansIn = (unit: Preferences['unit'], means: string | null): string | null =>
  unit === 'mm' ? means : (means?.replace(/, mm\b/g, ', inches') ?? null);
