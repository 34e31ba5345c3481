import { failed, type Result } from '#base/result.ts';
import { parseLength } from '#base/units/parse-length.ts';
import { type Fibre, fibres } from '#base/units/yarn/fibre.ts';
import { parseYarn } from '#base/units/yarn/parse.ts';
import type { YarnSystem } from '#base/units/yarn/system.ts';
import type { YarnTrouble } from '#base/units/yarn/trouble.ts';
import { type Copier, usualCopier } from '#craft/size/copier.ts';
import { type LaceKind, usualWraps } from '#craft/size/grid.ts';
import { USUAL_LIMIT } from '#craft/size/repeats.ts';
import { type Thread, threadOf } from '#craft/size/thread.ts';
import type { FitPlace, FitTarget, SizeTarget, SizeWish } from '#jobs/size/wish.ts';
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

/** Labels in these systems are of these fibres unless something else is said. */
const FIBRE_OF: Partial<Record<YarnSystem, Fibre>> = { NeL: 'linen', Ne: 'cotton', NeK: 'wool' };

function threadGiven({ thread, fibre, wraps }: SizeFlags): Thread[] {
  if (thread === undefined && wraps === undefined) return [];
  const yarn = thread === undefined ? null : orRefuse(inThread(parseYarn(thread)), '--thread');
  // Counted windings alone tell the thickness; which fibre it is then only tells its weight.
  const likely = thread && /silk/i.test(thread) ? 'silk' : yarn ? FIBRE_OF[yarn.system] : 'cotton';
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

/** A number with a point or a comma; null for anything else. */
const numberIn = (text: string): number | null =>
  /^\d{1,6}([.,]\d{1,6})?$/.test(text) ? Number(text.replace(',', '.')) : null;

/** `71%`, `71 %` or `0.71`, as a factor above nought. */
export const share =
  (option: string, example: string) =>
  (text: string): number => {
    const percent = text.trim().endsWith('%');
    const number = numberIn(text.replace('%', '').trim());
    if (number === null || number <= 0) badOption(option, text, `a percentage such as ${example}`);
    // 71 for 71 %, and 0.71 for the same; nobody asks for a pattern 71 times as large.
    return percent || number > 10 ? number / 100 : number;
  };

/** `28/cm`, `28` or `71/in`: wraps in a centimetre. */
export function wraps(text: string): number {
  const [, figures = '', unit = 'cm'] =
    /^([\d.,]+)\s*(?:(?:\/|per|a|an|wraps)\s*)*(cm|in|inch)?$/i.exec(text.trim()) ?? [];
  const number = numberIn(figures);
  const perCm = number === null ? Number.NaN : unit.toLowerCase() === 'cm' ? number : number / 2.54;
  return perCm >= 1 && perCm <= 200
    ? perCm
    : badOption('--wraps', text, 'how often it goes round side by side, such as 28/cm or 71/in');
}

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
export function corner(text: string): FitTarget['corners'] {
  const repeats = /^([\d.,]+)\s*repeats?$/i.exec(text.trim())?.[1];
  const many = repeats === undefined ? null : numberIn(repeats);
  if (many !== null) return { repeats: many };
  const mm = parseLength(text);
  return mm.ok && mm.value >= 0 && repeats === undefined
    ? { mm: mm.value }
    : badOption('--corner', text, 'what the corners of one side take of it, such as 40mm or "2 repeats"');
}

/** `50-200%`: what a photocopier can be set to. */
export function copier(text: string): Copier {
  const [, from = '', to = ''] = /^(\d+)\s*%?\s*(?:-|\u2013|to|\.\.)\s*(\d+)\s*%?$/.exec(text.trim()) ?? [];
  const [least, most] = [numberIn(from), numberIn(to)];
  if (least === null || most === null || least < 1 || least >= 100 || most <= 100 || most > 1000)
    badOption('--copier', text, 'the least and the most that it can be set to, such as 50-200%');
  return { ...usualCopier, least, most };
}

/** A count above nought, or a number of wraps. */
export const numberAbove =
  (option: string, example: string, whole = false) =>
  (text: string): number => {
    const number = numberIn(text.trim());
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
