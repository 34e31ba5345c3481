import { mmToInches } from './length.ts';

/** `12.5 mm`: at most `digits` decimals, none that are nought, a point for the decimal mark, nothing grouped. */
export const formatMm = (mm: number, digits = 2): string => `${formatNumber(mm, digits)} mm`;

/** The same length in inches: `0.492 in`. */
export const formatInches = (mm: number, digits = 3): string => `${formatNumber(mmToInches(mm), digits)} in`;

/** Both, for people who own either kind of ruler: `100 mm (3.937 in)`. */
export const formatBoth = (mm: number): string => `${formatMm(mm)} (${formatInches(mm)})`;

/** A number to at most `digits` (0 to 9) decimals, rounded half away from nought, never with an exponent. */
export function formatNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`formatNumber: ${value}`);
  // Number.toFixed works on the binary value, so that 1.005 would give 1.00: its shortest decimal form is what is meant.
  const size = Math.abs(value);
  const shifted = Number(`${size}e${digits}`);
  const rounded = Number.isFinite(shifted) ? Number(`${Math.round(shifted)}e-${digits}`) : size;
  const text = rounded.toFixed(digits);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return value < 0 && short !== '0' ? `-${short}` : short;
}
