import type { Point } from '#base/geometry/point.ts';

/** Lengths and places in words, the same way in every rule. */
export const sayLength = (value: number, unit: 'mm' | 'px'): string => `${sayNumber(value)} ${unit}`;

/** At most two places, without trailing zeros; what would read as nothing at all is said as "under 0.01". */
export function sayNumber(value: number): string {
  const rounded = Number(value.toFixed(2));
  if (rounded === 0 && value > 0) return 'under 0.01';
  return String(rounded === 0 ? 0 : rounded);
}

export const sayPlace = ({ x, y }: Point, unit: 'mm' | 'px'): string =>
  `${sayNumber(x)} ${unit} across, ${sayNumber(y)} ${unit} down`;

/** 'pin 3', 'pins 3 and 4', 'pins 3, 4, 5 and 9 more'; pins are counted from 1, as people do. */
export function sayPins(indices: readonly number[]): string {
  const numbers = indices.map((index) => String(index + 1));
  if (numbers.length === 1) return `pin ${numbers[0]}`;
  if (numbers.length <= 4) return `pins ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
  return `pins ${numbers.slice(0, 3).join(', ')} and ${numbers.length - 3} more`;
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** '1 pin', '7 pins'. */
export const count = (many: number, one: string, more = `${one}s`): string =>
  `${many} ${many === 1 ? one : more}`;
