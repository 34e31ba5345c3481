import type { Densities, Density } from './density.ts';
import type { FileScale } from './picture.ts';

/** What screens and cameras write where nobody measured anything. Common practice, no source. */
const DEFAULTS = [72, 96];

/** No scanner works outside this range of dots an inch. Common practice, no source. */
const COARSEST = 50;
const FINEST = 9600;

/** What scanners offer, in dots an inch. Common practice, no source. */
const OFFERED = [75, 100, 150, 200, 240, 300, 400, 600, 800, 1200, 2400, 4800];

/**
 * Weighs what a file says of its own scale. A statement that nobody measured is handed on as doubtful, so that
 * the person can be told; of one that was measured and one that was not, the measured one counts.
 */
export function scaleFrom({ found, byCamera }: Densities): FileScale {
  const [first] = found;
  if (first === undefined) return { kind: 'none' };
  if (byCamera) return doubtful(first, 'camera');
  const credible = found.filter((density) => isPossible(density) && !isDefault(density));
  const [best] = credible;
  if (best === undefined) {
    const possible = found.find(isPossible);
    return possible ? doubtful(possible, 'default') : doubtful(first, 'absurd');
  }
  if (credible.some((density) => !agree(density, best))) return doubtful(best, 'disagreeing');
  const { across, down, rounding } = credible.reduce((a, b) => (b.rounding < a.rounding ? b : a));
  return Math.abs(across - down) <= Math.max(2 * rounding, across * SQUARE)
    ? { kind: 'stated', dpi: tidy((across + down) / 2, rounding) }
    : { kind: 'unequal', across: tidy(across, rounding), down: tidy(down, rounding) };
}

/** Dots count as square up to this share: 0.1 mm over the length of an A5 sheet. */
const SQUARE = 0.0005;

const doubtful = (density: Density, why: 'default' | 'camera' | 'absurd' | 'disagreeing'): FileScale => ({
  kind: 'doubtful',
  dpi: tidy(density.across, density.rounding),
  why,
});

const isPossible = ({ across, down }: Density): boolean =>
  Math.min(across, down) >= COARSEST && Math.max(across, down) <= FINEST;

const isDefault = ({ across, down, rounding }: Density): boolean =>
  DEFAULTS.some((dpi) => Math.max(Math.abs(across - dpi), Math.abs(down - dpi)) <= Math.max(0.5, rounding));

const agree = (a: Density, b: Density): boolean => {
  const allowed = a.rounding + b.rounding + a.across * SQUARE;
  return Math.abs(a.across - b.across) <= allowed && Math.abs(a.down - b.down) <= allowed;
};

/**
 * What was meant, where the file's own unit cannot say it exactly: 300 dots an inch is 11811 a metre in PNG (299.9994)
 * and 118 a centimetre in JFIF (299.72).
 */
const tidy = (dpi: number, rounding: number): number =>
  OFFERED.find((offered) => Math.abs(offered - dpi) <= rounding) ?? dpi;
