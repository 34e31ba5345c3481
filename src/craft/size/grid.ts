import { diametersOfWraps, texOfWraps } from '#base/units/yarn/diameter.ts';
import type { Fibre } from '#base/units/yarn/fibre.ts';
import type { Thread } from './thread.ts';

/** How close the lace is worked, which says how much thread a footside gap takes. */
export type LaceKind = 'torchon' | 'point-ground' | 'heavy-cloth';

/**
 * Wraps of the thread that fill the gap between two neighbouring footside pins. Common practice, no source, from
 * memory: about 12 for Torchon, rather fewer for point grounds, more where cloth is heavy. Defaults, never rules.
 */
export const usualWraps: Readonly<Record<LaceKind, number>> = {
  torchon: 12,
  'point-ground': 10,
  'heavy-cloth': 14,
};

/** How far from the wanted wraps a thread may be, as a share of them. Defaults of ours. */
export interface Leeway {
  /** Nobody would tell it from the right one. */
  readonly suits: number;
  /** It can be worked; the lace comes out visibly thinner or fuller. */
  readonly works: number;
}

export const usualLeeway: Leeway = { suits: 0.1, works: 0.2 };

/** 'thin': so fine that the lace hangs open; 'thick': so thick that it crowds the pins. */
export type Fit = 'suits' | 'rather-thin' | 'rather-thick' | 'thin' | 'thick';

/** Wraps of a thread in a footside gap of `spacing` mm. */
export const wrapsInGap = ({ wrapsPerCm }: Thread, spacing: number): number => (wrapsPerCm * spacing) / 10;

/** The footside spacing, mm, at which the gap takes so many wraps of the thread. */
export const spacingForThread = ({ wrapsPerCm }: Thread, wraps: number): number => (10 * wraps) / wrapsPerCm;

/** The thread that a spacing asks for. */
export interface WantedThread {
  readonly wrapsPerCm: number;
  readonly wrapped: number;
  readonly compact: number;
  /** Of each fibre asked about: grams in a kilometre. */
  readonly tex: number;
}

/** The thread of which so many wraps fill a gap of `spacing` mm. */
export function threadForSpacing(spacing: number, wraps: number, fibre: Fibre): WantedThread {
  const wrapsPerCm = (10 * wraps) / spacing;
  return { wrapsPerCm, ...diametersOfWraps(wrapsPerCm), tex: texOfWraps(wrapsPerCm, fibre) };
}

/** More wraps than wanted in the gap: the thread is thin for it. */
export function fitOf(wraps: number, wanted: number, leeway: Leeway = usualLeeway): Fit {
  const off = wraps / wanted - 1;
  if (Math.abs(off) <= leeway.suits) return 'suits';
  if (Math.abs(off) <= leeway.works) return off > 0 ? 'rather-thin' : 'rather-thick';
  return off > 0 ? 'thin' : 'thick';
}

/** One thread against one pattern at several scales. */
export interface ThreadRow {
  readonly thread: Thread;
  /** The scale, as a factor of the pattern's present size, at which the thread is just right. */
  readonly scale: number;
  /** One a scale asked about, in their order. */
  readonly at: readonly { readonly scale: number; readonly wraps: number; readonly fit: Fit }[];
}

/**
 * Which threads suit a pattern of footside `spacing` mm at the scales given (1 is its present size): the one nearest
 * to right at the first scale comes first.
 */
export function threadTable(
  threads: readonly Thread[],
  spacing: number,
  wanted: number,
  scales: readonly number[],
  leeway: Leeway = usualLeeway,
): ThreadRow[] {
  const rows = threads.map((thread) => ({
    thread,
    scale: spacingForThread(thread, wanted) / spacing,
    at: scales.map((scale) => {
      const wraps = wrapsInGap(thread, spacing * scale);
      return { scale, wraps, fit: fitOf(wraps, wanted, leeway) };
    }),
  }));
  const first = scales[0] ?? 1;
  // As far off is twice too thick as twice too thin.
  const off = ({ scale }: ThreadRow): number => Math.abs(Math.log(scale / first));
  return rows.sort((a, b) => off(a) - off(b));
}
