import { done, failed, type Result } from '#base/result.ts';

/** A stretch that has to take a whole number of repeats: a strip, a way round, or one side of a cloth. */
export interface Stretch {
  /** How long it is, mm. */
  readonly length: number;
  /** How much of it the corners at its ends take, mm of the pattern as it is; 0 where there are none. */
  readonly corners: number;
}

/** How the repeats are made to fit: by printing the pattern a little larger or smaller, or by easing the corners. */
export type FitWay = 'scale' | 'ease';

/** One number of repeats, and what it costs. */
export interface RepeatChoice {
  readonly way: FitWay;
  /** Whole repeats on each stretch, in order. */
  readonly counts: readonly number[];
  /** How large the pattern becomes, as a factor; 1 where the corners are eased. */
  readonly scale: number;
  /** What each stretch is then longer than its lace, mm: shared by the corners at its ends, held in where below nought. */
  readonly ease: readonly number[];
  /** The larger of both, as a share: of the size, or of the stretch. */
  readonly cost: number;
  /** Whether that stays within the limit. */
  readonly fits: boolean;
}

export interface RepeatChoices {
  /** In rising number of repeats. */
  readonly choices: readonly RepeatChoice[];
  /** The one of them that costs least. */
  readonly best: RepeatChoice;
}

export type RepeatTrouble =
  | { readonly kind: 'corners-too-long'; readonly corners: number; readonly length: number }
  | { readonly kind: 'repeats-over-limit'; readonly limit: number; readonly nearest: RepeatChoice };

export interface RepeatOptions {
  /** The most that size or corners may change, as a share. */
  readonly limit?: number;
  /** How many choices are shown on either side. */
  readonly few?: number;
  /** The ways that may be taken; easing needs corners. */
  readonly ways?: readonly FitWay[];
  /** Only this number of repeats on the first stretch. */
  readonly count?: number;
}

/** A default of ours: so small a change is hardly seen in the lace. */
export const USUAL_LIMIT = 0.05;

/**
 * How many whole repeats of `repeat` mm fit each stretch, and the small change that makes them fit to the last bit:
 * `scale * (count * repeat + corners) + ease = length`. All stretches are worked from one pattern and so have one scale;
 * where they ask for different ones, the scale between makes the easing the same share of both. Easing alone is offered
 * where there are corners to ease. Throws where a length is not above nought.
 */
export function wholeRepeats(
  repeat: number,
  stretches: readonly Stretch[],
  { limit = USUAL_LIMIT, few = 2, ways = ['scale', 'ease'], count }: RepeatOptions = {},
): Result<RepeatChoices, RepeatTrouble> {
  if (!(repeat > 0) || stretches.length === 0 || stretches.some(({ length }) => !(length > 0)))
    throw new RangeError(`wholeRepeats: a repeat of ${repeat} mm`);
  const tight = stretches.find(({ length, corners }) => corners * (1 - limit) > length);
  if (tight) return failed({ kind: 'corners-too-long', ...tight });

  const cornered = stretches.some(({ corners }) => corners > 0);
  const open = ways.filter((way) => way === 'scale' || cornered);
  const [first] = stretches;
  const exact = (first!.length - first!.corners) / repeat;
  const from = Math.max(1, Math.floor(exact) - few + 1);
  const counts = count === undefined ? Array.from({ length: 2 * few }, (_, k) => from + k) : [count];
  const choices = counts.flatMap((many) =>
    (open.length > 0 ? open : SCALE).map((way) =>
      choiceOf(repeat, stretches, countsFor(repeat, stretches, many, way), way, limit),
    ),
  );
  const best = choices.reduce((least, choice) => (choice.cost < least.cost - SAME ? choice : least));
  return best.fits ? done({ choices, best }) : failed({ kind: 'repeats-over-limit', limit, nearest: best });
}

const SCALE: readonly FitWay[] = ['scale'];

/** Shares that differ by less are the same; the larger number of repeats then does not win by a rounding. */
const SAME = 1e-12;

/** The other stretches take the number of repeats that is nearest to the size which suits the first. */
function countsFor(repeat: number, stretches: readonly Stretch[], count: number, way: FitWay): number[] {
  const [first, ...others] = stretches;
  const scale = way === 'ease' ? 1 : ratioOf(repeat, first!, count);
  const counts = others.map(({ length, corners }) =>
    Math.max(1, Math.round((length / scale - corners) / repeat)),
  );
  return [count, ...counts];
}

function choiceOf(
  repeat: number,
  stretches: readonly Stretch[],
  counts: readonly number[],
  way: FitWay,
  limit: number,
): RepeatChoice {
  const ratios = stretches.map((stretch, k) => ratioOf(repeat, stretch, counts[k]!));
  const [low, high] = [Math.min(...ratios), Math.max(...ratios)];
  const scale = way === 'ease' ? 1 : low === high ? low : Math.sqrt(low * high);
  const ease = stretches.map(({ length, corners }, k) =>
    ratios[k] === scale ? 0 : length - scale * (counts[k]! * repeat + corners),
  );
  const cost = Math.max(Math.abs(scale - 1), ...ease.map((mm, k) => Math.abs(mm) / stretches[k]!.length));
  return { way, counts, scale, ease, cost, fits: cost <= limit + SAME };
}

/** The size at which a stretch is filled by that many repeats and its corners. */
const ratioOf = (repeat: number, { length, corners }: Stretch, count: number): number =>
  length / (count * repeat + corners);

/**
 * The length that a card of `thickness` has to have in the flat to lie round a pillow of this circumference, mm: that of
 * its middle layer, which bending neither stretches nor shortens, `circumference + pi * thickness`.
 */
export const roundRoller = (circumference: number, thickness: number): number =>
  circumference + Math.PI * thickness;
