import { failed, type Result } from '#base/result.ts';
import { type Fibre, fibres } from '#base/units/yarn/fibre.ts';
import { parseYarn } from '#base/units/yarn/parse.ts';
import type { YarnTrouble } from '#base/units/yarn/trouble.ts';
import { type Copier, usualCopier } from '#craft/size/copier.ts';
import { type LaceKind, usualWraps } from '#craft/size/grid.ts';
import { USUAL_LIMIT } from '#craft/size/repeats.ts';
import { type Thread, threadOf } from '#craft/size/thread.ts';
import { readCopier, readCorners, readNumber, readShare, readWraps } from '#jobs/size/read.ts';
import type { FitPlace, FitTarget, SizeTarget, SizeWish } from '#jobs/size/wish.ts';
import { likelyFibre } from '#jobs/threads/likely-fibre.ts';
import type { ThreadTrouble } from '#jobs/trouble.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';
import { orRefuse } from '../outcome/refused.ts';
import { badOption } from './bad-option.ts';
import { lengthIn } from './length.ts';
import { needed } from './needed.ts';

/** The flags of `size` that say what is wished. */
export interface SizeFlags {
  readonly thread?: string;
  readonly fibre?: Fibre;
  readonly wraps?: number;
  readonly lace: LaceKind;
  readonly gap?: number;
  readonly spacing?: number;
  readonly repeat?: number;
  readonly toSpacing?: number;
  readonly toThread?: true;
  readonly scale?: number;
  readonly fitLength?: number;
  readonly fitRoller?: number;
  readonly fitCloth?: { readonly width: number; readonly height: number };
  readonly fitRound?: number;
  readonly corner?: FitTarget['corners'];
  readonly repeats?: number;
  readonly by?: 'scale' | 'ease';
  readonly limit?: number;
  readonly copier?: Copier;
  readonly pin?: number;
  readonly withHoles?: true;
}

export const LACES = Object.keys(usualWraps) as readonly LaceKind[];

/** What the flags wish for; `list` are the threads of the maker's own list. */
export function sizeWishOf(flags: SizeFlags, list: readonly ThreadEntry[]): SizeWish {
  return {
    threads: [...threadGiven(flags), ...list.map(threadOrRefuse)],
    lace: flags.lace,
    wraps: flags.gap ?? usualWraps[flags.lace],
    spacing: flags.spacing ?? null,
    repeat: flags.repeat ?? null,
    target: targetOf(flags),
    thickness: flags.withHoles ?? false,
    copier: flags.copier ?? usualCopier,
    pin: flags.pin ?? null,
  };
}

function threadGiven({ thread, fibre, wraps }: SizeFlags): Thread[] {
  if (thread === undefined && wraps === undefined) return [];
  const yarn = thread === undefined ? null : orRefuse(inThread(parseYarn(thread)), '--thread');
  const likely = likelyFibre(thread ?? null, yarn) ?? undefined;
  const spun = needed('--fibre', fibre ?? likely, `what the thread is spun of: ${fibres.join(', ')}`);
  return [
    threadOrRefuse({
      name: thread ?? 'Your thread',
      fibre: spun,
      ...(thread !== undefined && { count: thread }),
      ...(wraps !== undefined && { wrapsPerCm: wraps }),
    }),
  ];
}

const threadOrRefuse = (entry: ThreadEntry): Thread => orRefuse(inThread(threadOf(entry)), entry.name);

/** Trouble with a thread, as trouble that has words. */
const inThread = <Value>(read: Result<Value, YarnTrouble>): Result<Value, ThreadTrouble> =>
  read.ok ? read : failed({ kind: 'bad-thread', trouble: read.trouble });

function targetOf(flags: SizeFlags): SizeTarget | null {
  const targets: SizeTarget[] = [
    ...(flags.scale === undefined ? [] : [{ kind: 'scale', factor: flags.scale } as const]),
    ...(flags.toSpacing === undefined ? [] : [{ kind: 'spacing', spacing: flags.toSpacing } as const]),
    ...(flags.toThread ? [{ kind: 'thread' } as const] : []),
    ...placesOf(flags).map((place) => fitOf(place, flags)),
  ];
  if (targets.length > 1)
    badOption(
      'The size',
      `${targets.length} of them`,
      'only one of --scale, --to-spacing, --to-thread and --fit-…',
    );
  return targets[0] ?? null;
}

const placesOf = ({ fitLength, fitRoller, fitCloth, fitRound }: SizeFlags): FitPlace[] => [
  ...(fitLength === undefined ? [] : [{ kind: 'length', length: fitLength } as const]),
  ...(fitRoller === undefined ? [] : [{ kind: 'roller', circumference: fitRoller } as const]),
  ...(fitCloth === undefined ? [] : [{ kind: 'cloth', ...fitCloth } as const]),
  ...(fitRound === undefined ? [] : [{ kind: 'round', diameter: fitRound } as const]),
];

const fitOf = (place: FitPlace, { corner, by, repeats, limit }: SizeFlags): FitTarget => ({
  kind: 'fit',
  place,
  corners: corner ?? { mm: 0 },
  way: by ?? null,
  repeats: repeats ?? null,
  limit: limit ?? USUAL_LIMIT,
});

/** `71%`, `71 %` or `0.71`, as a factor above nought. */
export const share =
  (option: string, example: string) =>
  (text: string): number =>
    readShare(text) ?? badOption(option, text, `a percentage such as ${example}`);

/** `28/cm`, `28` or `71/in`: wraps in a centimetre. */
export const wraps = (text: string): number =>
  readWraps(text) ??
  badOption('--wraps', text, 'how often it goes round side by side, such as 28/cm or 71/in');

/** `280x280mm`, `11x11in`, `280`: the sides of a cloth. */
export function cloth(text: string): { width: number; height: number } {
  const [first = '', second = first, more] = text.split(/[x×*]|\bby\b/i).map((part) => part.trim());
  const unit = /[a-z"\u2033]+$/i.exec(second)?.[0] ?? '';
  const [width, height] = [lengthIn(/[a-z"\u2033]$/i.test(first) ? first : first + unit), lengthIn(second)];
  if (width === null || height === null || more !== undefined)
    badOption('--fit-cloth', text, 'its sides, such as 280x280mm or 11x11in');
  return { width, height };
}

/** `1.5 repeats` or `40mm`: what both corners of a side take of it. */
export const corner = (text: string): FitTarget['corners'] =>
  readCorners(text) ??
  badOption('--corner', text, 'what the corners of one side take of it, such as 40mm or "2 repeats"');

/** `50-200%`: what a photocopier can be set to. */
export const copier = (text: string): Copier =>
  readCopier(text) ??
  badOption('--copier', text, 'the least and the most that it can be set to, such as 50-200%');

/** A count above nought, or a number of wraps. */
export const numberAbove =
  (option: string, example: string, whole = false) =>
  (text: string): number => {
    const number = readNumber(text.trim());
    return number !== null && number > 0 && (!whole || Number.isInteger(number))
      ? number
      : badOption(option, text, `a number such as ${example}`);
  };

/** `71%,85%,100%`: sizes to judge. */
export function sizes(text: string): readonly number[] {
  const parts = text.split(/[,;]\s*|\s+/).filter((part) => part !== '');
  if (parts.length === 0 || parts.length > 12)
    badOption('--sizes', text, 'some percentages such as 71%,85%,100%');
  return parts.map(share('--sizes', '71%,85%,100%'));
}
