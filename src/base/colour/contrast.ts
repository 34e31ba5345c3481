import type { LinearRgb } from './srgb.ts';

/** Relative luminance, 0 for black to 1 for white (WCAG 2.2, "relative luminance"). */
export const relativeLuminance = ({ red, green, blue }: LinearRgb): number =>
  0.2126 * red + 0.7152 * green + 0.0722 * blue;

/** Contrast ratio of two colours in either order, 1 to 21 (WCAG 2.2, "contrast ratio"). */
export function contrast(one: LinearRgb, other: LinearRgb): number {
  const a = relativeLuminance(one);
  const b = relativeLuminance(other);
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** The least contrast of a line or sign that has to be seen (WCAG 2.2, success criterion 1.4.11). */
export const LEAST_MARK_CONTRAST = 3;
