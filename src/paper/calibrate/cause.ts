/** Why a printed ruler most likely has the wrong length. */
export type ScaleCause = 'a4-on-letter' | 'letter-on-a4' | 'fit-to-page' | 'borderless' | 'browser-print';

/**
 * The likely cause of a print that measures `ratio` times what it should, or undefined for a ratio that no setting
 * is known for. 94.1 % and 97.3 % follow from the paper sizes (279.4/297, 210/215.9); the others are what users of
 * general drawing programs report, no source.
 */
export function likelyCause(ratio: number): ScaleCause | undefined {
  const near = (value: number, within: number): boolean => Math.abs(ratio - value) <= within;
  if (near(279.4 / 297, 0.004)) return 'a4-on-letter';
  if (near(210 / 215.9, 0.0012)) return 'letter-on-a4';
  if (ratio >= 0.955 && ratio <= 0.985) return 'fit-to-page';
  if (near(1.02, 0.007)) return 'borderless';
  if (near(1.06, 0.012)) return 'browser-print';
  return undefined;
}
