/** What a photocopier can be set to. Percentages; common practice, no source: read yours off the machine. */
export interface Copier {
  readonly least: number;
  readonly most: number;
  /** Buttons that are no whole percent, such as the step from one A size to the next. */
  readonly presets: readonly number[];
}

/**
 * 25 to 400 % in whole percents is what many machines allow (common practice, no source). One A size down or up is
 * 1/sqrt 2 or sqrt 2 (ISO 216), which machines show rounded, as 71 and 141 %, and make as 70.7 and 141.4 %.
 */
export const usualCopier: Copier = { least: 25, most: 400, presets: [70.7, 141.4] };

/** Copies made one from the other, as the percentages to set. */
export interface CopyChain {
  readonly percents: readonly number[];
  /** The size that they make, as a factor. */
  readonly reached: number;
  /** How far that is from the size that was wanted, as a share of it: 0.004 is 0.4 % too large. */
  readonly off: number;
}

/** How near a copy has to come, as a share: half a percent is 0.5 mm in 100 mm. */
export const COPY_TOLERANCE = 0.005;

/**
 * The fewest copies of copies, at most three, that make a pattern `factor` times as large within `tolerance`. One copy is
 * the nearest there is; of several the boldest step is as gentle as can be. None are needed for a factor of 1; null where three
 * do not reach it. Throws unless `factor` is above nought.
 */
export function copySteps(
  factor: number,
  copier: Copier = usualCopier,
  tolerance: number = COPY_TOLERANCE,
): CopyChain | null {
  if (!(factor > 0) || !Number.isFinite(factor)) throw new RangeError(`copySteps: factor ${factor}`);
  const settings = settingsOf(copier);
  for (const chains of [noCopy, oneCopy, twoCopies, threeCopies]) {
    const best = chains(settings, factor)
      .map((percents) => chainOf(percents, factor))
      .filter(({ off }) => Math.abs(off) <= tolerance)
      .reduce<CopyChain | null>((first, next) => (first && !better(next, first) ? first : next), null);
    if (best) return best;
  }
  return null;
}

/** All settings of the machine in rising order; 100 % is left out, since it changes nothing. */
function settingsOf({ least, most, presets }: Copier): number[] {
  const whole = Array.from(
    { length: Math.max(0, Math.floor(most) - Math.ceil(least) + 1) },
    (_, k) => Math.ceil(least) + k,
  );
  return [...new Set([...whole, ...presets.filter((one) => one >= least && one <= most)])]
    .filter((percent) => percent > 0 && percent !== 100)
    .sort((a, b) => a - b);
}

function chainOf(percents: readonly number[], factor: number): CopyChain {
  const reached = percents.reduce((size, percent) => size * percent, 1) / 100 ** percents.length;
  return { percents, reached, off: reached / factor - 1 };
}

function better(one: CopyChain, other: CopyChain): boolean {
  const [nearer, gentler] = [Math.abs(other.off) - Math.abs(one.off), harshness(other) - harshness(one)];
  const [first, second] = one.percents.length > 1 ? [gentler, nearer] : [nearer, gentler];
  return Math.abs(first) > SAME ? first > 0 : second > SAME;
}

/** Two shares that differ by less are the same number, added up in another order. */
const SAME = 1e-12;

/** How far the boldest of the steps is from 100 %. */
const harshness = ({ percents }: CopyChain): number =>
  Math.max(0, ...percents.map((percent) => Math.abs(Math.log(percent / 100))));

type Chains = (settings: readonly number[], factor: number) => (readonly number[])[];

const noCopy: Chains = () => [[]];

const oneCopy: Chains = (settings, factor) => nearestTwo(settings, factor * 100).map((percent) => [percent]);

/** For every first copy the two second ones on either side of the size that is still wanted. */
const twoCopies: Chains = (settings, factor) =>
  settings.flatMap((first) =>
    nearestTwo(settings, (factor * 1e4) / first).flatMap((second) =>
      second >= first ? [[first, second]] : [],
    ),
  );

const threeCopies: Chains = (settings, factor) =>
  settings.flatMap((first) =>
    twoCopies(settings, (factor * 100) / first).flatMap((rest) =>
      rest[0]! >= first ? [[first, ...rest]] : [],
    ),
  );

/** The settings just under and just over a wanted percentage. */
function nearestTwo(settings: readonly number[], wanted: number): number[] {
  let [from, to] = [0, settings.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (settings[middle]! < wanted) from = middle + 1;
    else to = middle;
  }
  return settings.slice(Math.max(0, from - 1), from + 1);
}
