import type { Copier } from '#craft/size/copier.ts';
import type { LaceKind } from '#craft/size/grid.ts';
import type { FitWay } from '#craft/size/repeats.ts';
import type { Thread } from '#craft/size/thread.ts';

/** What a person asks of a size. Lengths are mm, shares and factors are 1 for 100 %. */
export interface SizeWish {
  /** The threads to judge; the first is the one that "to suit the thread" means. */
  readonly threads: readonly Thread[];
  readonly lace: LaceKind;
  /** Wraps of the thread wanted in a footside gap. */
  readonly wraps: number;
  /** Where the pattern does not tell them, or tells them wrongly. */
  readonly spacing: number | null;
  readonly repeat: number | null;
  readonly target: SizeTarget | null;
  /** Whether pins, holes and gimps are scaled too. */
  readonly thickness: boolean;
  readonly copier: Copier;
  /** The maker's own pin, as measured. */
  readonly pin: number | null;
}

/** The size to come to. */
export type SizeTarget =
  | { readonly kind: 'scale'; readonly factor: number }
  | { readonly kind: 'spacing'; readonly spacing: number }
  | { readonly kind: 'thread' }
  | FitTarget;

/** A place that has to take a whole number of repeats. */
export interface FitTarget {
  readonly kind: 'fit';
  readonly place: FitPlace;
  /** How much of each side its two corners take together: mm of the pattern, or repeats. */
  readonly corners: { readonly mm: number } | { readonly repeats: number };
  /** By scale, by easing the corners, or whichever costs less. */
  readonly way: FitWay | null;
  /** The number on the first side, where a person has chosen it. */
  readonly repeats: number | null;
  /** The most that may change, as a share. */
  readonly limit: number;
}

export type FitPlace =
  | { readonly kind: 'length'; readonly length: number }
  | { readonly kind: 'roller'; readonly circumference: number }
  | { readonly kind: 'cloth'; readonly width: number; readonly height: number }
  /** Round a cloth that measures so much across. */
  | { readonly kind: 'round'; readonly diameter: number };
