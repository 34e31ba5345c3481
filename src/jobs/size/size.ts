import type { Progress } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Fibre } from '#base/units/yarn/fibre.ts';
import { redraft } from '#craft/draft/redraft.ts';
import { type CopyChain, copySteps } from '#craft/size/copier.ts';
import {
  type Fit,
  fitOf,
  spacingForThread,
  threadForSpacing,
  type WantedThread,
  wrapsInGap,
} from '#craft/size/grid.ts';
import { choosePin, needleForPin, type PinChoice, type PrickingNeedle } from '#craft/size/pins.ts';
import type { RepeatTrouble } from '#craft/size/repeats.ts';
import type { Thread } from '#craft/size/thread.ts';
import { findRegularity } from '#craft/true/index.ts';
import { footsideSpacing } from '#pattern/footside.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import type { RingRecipe } from '#pattern/recipe/ring.ts';
import { scalePattern } from '#pattern/scale.ts';
import type { SizeTrouble } from '../trouble.ts';
import { type Fitted, fitPlace } from './fit.ts';
import type { SizeWish } from './wish.ts';

/** A size, and everything that goes with it. */
export interface Sizing {
  readonly wish: SizeWish;
  /** Of the pattern as it came, mm; null where nothing tells. */
  readonly before: Measures;
  /** How much larger it becomes; 1 where no other size was asked for. */
  readonly factor: number;
  readonly after: Measures;
  readonly fitted: Fitted | null;
  /** How a copier reaches the size; null where nothing changes or three copies do not reach it. */
  readonly copies: CopyChain | null;
  readonly threads: readonly ThreadAtSize[];
  /** The thread that the new size asks for, of each usual fibre. */
  readonly wanted: readonly (WantedThread & { readonly fibre: Fibre })[];
  readonly pins: { readonly choice: PinChoice; readonly needle: PrickingNeedle } | null;
  /** The pattern at its new size; null where no pattern was given. */
  readonly pattern: Pattern | null;
  /** Whether its recipe was given the new number of repeats. */
  readonly redrafted: boolean;
}

export interface Measures {
  readonly spacing: number | null;
  readonly repeat: number | null;
}

/** A thread against the size that the pattern will have. */
export interface ThreadAtSize {
  readonly thread: Thread;
  /** The footside spacing at which it is just right, mm. */
  readonly rightSpacing: number;
  /** At the new size; null where the footside spacing is not known. */
  readonly here: {
    readonly wraps: number;
    readonly fit: Fit;
    /** How much larger again the pattern would have to be for it. */
    readonly scale: number;
    readonly copies: CopyChain | null;
  } | null;
}

/** The size asked for, which threads suit it, and the pattern at that size. Without a pattern: what is known of threads. */
export function sizePattern(
  pattern: Pattern | null,
  wish: SizeWish,
  progress: Progress,
): Result<Sizing, SizeTrouble | RepeatTrouble> {
  if (pattern?.unit === 'px') return failed({ kind: 'size-scale-unknown' });
  const before = measuresOf(pattern, wish, progress);
  const found = factorOf(pattern, before, wish);
  if (!found.ok) return found;
  const { factor, fitted } = found.value;
  if (!(factor >= LEAST && factor <= MOST))
    return failed({ kind: 'size-absurd', factor, least: LEAST, most: MOST });

  const after = {
    spacing: before.spacing && before.spacing * factor,
    repeat: before.repeat && before.repeat * factor,
  };
  const remade = pattern && withRepeats(pattern, fitted);
  // A whole list of threads asks for no one pin; the grid does.
  const only = wish.threads.length === 1 ? wish.threads[0]! : null;
  const pin = after.spacing === null ? null : choosePin(after.spacing, only, wish.pin);
  return done({
    wish,
    before,
    factor,
    after,
    fitted,
    copies: factor === 1 ? null : copySteps(factor, wish.copier),
    threads: wish.threads.map((thread) => threadAt(thread, after.spacing, wish)),
    wanted: after.spacing === null ? [] : wantedAt(after.spacing, wish.wraps),
    pins: pin && { choice: pin, needle: needleForPin(pin.pin) },
    pattern: pattern && scalePattern(remade ?? pattern, factor, { thickness: wish.thickness }),
    redrafted: remade !== null,
  });
}

/** Outside of these the size is a slip of the finger: a twentieth, and twenty times. */
const LEAST = 0.05;
const MOST = 20;

function measuresOf(pattern: Pattern | null, wish: SizeWish, progress: Progress): Measures {
  return {
    spacing: wish.spacing ?? (pattern && footsideSpacing(pattern)),
    repeat: wish.repeat ?? (pattern && repeatOf(pattern, wish, progress)),
  };
}

const isRing = (recipe: Recipe | undefined): recipe is RingRecipe =>
  recipe?.kind === 'ring' && recipe.arc === 360;

/** The way round the circle on which the footside pins of a ring stand a spacing apart, measured straight, mm. */
const footsideCircle = ({ spacing, repeats, length }: RingRecipe): number =>
  (Math.PI * spacing) / Math.sin(Math.PI / (repeats * length));

/** As the pattern states it; else, where it is needed, the longest stretch after which its pins are found again. */
function repeatOf(
  { pins, repeat, recipe }: Pattern,
  { target }: SizeWish,
  progress: Progress,
): number | null {
  if (isRing(recipe)) return footsideCircle(recipe) / recipe.repeats;
  if (repeat) return Math.hypot(repeat.step.x, repeat.step.y);
  if (target?.kind !== 'fit') return null;
  const steps = findRegularity(pins, { progress }).structures.flatMap((one) =>
    one.kind === 'repeat' ? [Math.hypot(one.step.x, one.step.y)] : [],
  );
  return steps.length > 0 ? Math.max(...steps) : null;
}

interface Found {
  readonly factor: number;
  readonly fitted: Fitted | null;
}

function factorOf(
  pattern: Pattern | null,
  { spacing, repeat }: Measures,
  { target, threads, wraps }: SizeWish,
): Result<Found, SizeTrouble | RepeatTrouble> {
  if (target === null) return done({ factor: 1, fitted: null });
  if (target.kind === 'scale') return done({ factor: target.factor, fitted: null });
  if (target.kind === 'fit') {
    if (repeat === null) return failed({ kind: 'size-no-repeat' });
    // A ring that is drafted closes with the repeats that it has, and with no other number.
    const round = target.place.kind === 'round' && isRing(pattern?.recipe) ? pattern.recipe.repeats : null;
    const fitted = fitPlace(repeat, pattern?.sizes.cardThickness ?? 0, {
      ...target,
      repeats: round ?? target.repeats,
    });
    return fitted.ok ? done({ factor: fitted.value.chosen.scale, fitted: fitted.value }) : fitted;
  }
  if (spacing === null) return failed({ kind: 'size-no-spacing' });
  if (target.kind === 'spacing') return done({ factor: target.spacing / spacing, fitted: null });
  const [thread] = threads;
  if (!thread) return failed({ kind: 'size-no-thread' });
  return done({ factor: spacingForThread(thread, wraps) / spacing, fitted: null });
}

/** A drafted strip that fills one stretch is drafted anew with its new number of repeats; null where that is not so. */
function withRepeats(pattern: Pattern, fitted: Fitted | null): Pattern | null {
  const { recipe } = pattern;
  if (recipe?.kind !== 'strip' || fitted?.stretches.length !== 1 || fitted.stretches[0]!.corners > 0)
    return null;
  const repeats = fitted.chosen.counts[0]!;
  if (repeats === recipe.repeats) return null;
  const anew: Recipe = { ...recipe, repeats };
  const remade = redraft({ ...pattern, recipe }, anew);
  // What a hand did to the pattern goes before the number of its repeats.
  return remade.ok && remade.value.lost.length === 0 ? remade.value.pattern : null;
}

function threadAt(thread: Thread, spacing: number | null, { wraps: wanted, copier }: SizeWish): ThreadAtSize {
  const rightSpacing = spacingForThread(thread, wanted);
  if (spacing === null) return { thread, rightSpacing, here: null };
  const [wraps, scale] = [wrapsInGap(thread, spacing), rightSpacing / spacing];
  return {
    thread,
    rightSpacing,
    here: { wraps, fit: fitOf(wraps, wanted), scale, copies: copySteps(scale, copier) },
  };
}

const wantedAt = (spacing: number, wraps: number): Sizing['wanted'] =>
  (['linen', 'cotton', 'silk'] as const).map((fibre) => ({
    fibre,
    ...threadForSpacing(spacing, wraps, fibre),
  }));
