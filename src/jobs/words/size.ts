import { formatBoth, formatInches, formatMm } from '#base/units/format-length.ts';
import { NEEDLES_DIFFER } from '#base/units/gauges/needles.ts';
import type { Fibre } from '#base/units/yarn/fibre.ts';
import { formatCount, formatYarn } from '#base/units/yarn/format.ts';
import type { YarnSystem } from '#base/units/yarn/system.ts';
import { countOfTex } from '#base/units/yarn/system.ts';
import { foldedYarn } from '#base/units/yarn/yarn.ts';
import type { CopyChain } from '#craft/size/copier.ts';
import { type Fit, type LaceKind, usualWraps } from '#craft/size/grid.ts';
import type { RepeatChoice } from '#craft/size/repeats.ts';
import { eitherHabit, type Thread } from '#craft/size/thread.ts';
import type { Fitted } from '../size/fit.ts';
import type { Measures, Sizing, ThreadAtSize } from '../size/size.ts';
import { NEEDLE_CAUTION } from './caution.ts';
import { countInWords, listInWords, numberInWords } from './number.ts';

/** A size as a page to read: the pattern, its new size, the copier, the threads, pins and needle. */
export function sizeInWords(sizing: Sizing): string {
  const sections = [
    patternSection(sizing),
    sizing.fitted ? fitSection(sizing.fitted, sizing.before.spacing) : [],
    copierSection(sizing),
    ...(sizing.threads.length > FEW
      ? [['Your threads', ...sizing.threads.map(threadLine)]]
      : sizing.threads.map((one) => threadSection(one, sizing))),
    wantedSection(sizing),
    pinSection(sizing),
    [`${basisInWords(sizing)}. --gap takes another number.`],
  ];
  return `${sections
    .filter((lines) => lines.length > 0)
    .map((lines) => `${lines.join('\n')}\n`)
    .join('\n')}`;
}

/** What the figures rest on, without a full stop. */
export const basisInWords = ({ wish }: Sizing): string =>
  `Reckoned with ${numberInWords(wish.wraps, 1)} wraps of the thread between two footside pins, ${
    wish.wraps === usualWraps[wish.lace]
      ? `as is usual for ${laceInWords[wish.lace]} (common practice, from memory)`
      : 'as was asked for'
  }`;

/** The kinds of lace by how close they are worked. */
export const laceInWords: Readonly<Record<LaceKind, string>> = {
  torchon: 'Torchon',
  'point-ground': 'point grounds',
  'heavy-cloth': 'heavy cloth',
};

/** How far the footside pins stand apart and how long a repeat is; nothing where neither is known. */
export function measuresInWords({ spacing, repeat }: Measures): string | null {
  const said = [
    ...(spacing === null ? [] : [`footside pins stand ${formatBoth(spacing)} apart`]),
    ...(repeat === null ? [] : [`a repeat is ${formatBoth(repeat)} long`]),
  ];
  return said.length === 0 ? null : `${capital(listInWords(said))}.`;
}

function patternSection({ before, after, factor, pattern, redrafted, fitted }: Sizing): string[] {
  const measures = measuresInWords(before);
  if (measures === null) return [];
  const changed =
    factor === 1
      ? []
      : [
          `  At ${percentInWords(factor)}: ${listInWords([
            ...(after.spacing === null ? [] : [`footside ${formatBoth(after.spacing)}`]),
            ...(after.repeat === null ? [] : [`repeat ${formatBoth(after.repeat)}`]),
          ])}.`,
        ];
  const remade =
    redrafted && fitted ? `  It was drafted anew with ${fitted.chosen.counts[0]} repeats.` : null;
  return [
    pattern === null ? 'The grid' : 'The pattern',
    `  ${measures}`,
    ...changed,
    ...(remade ? [remade] : []),
  ];
}

function fitSection({ target, stretches, chosen, choices }: Fitted, spacing: number | null): string[] {
  const { place, limit } = target;
  const what = {
    length: () => `Whole repeats in ${formatBoth(stretches[0]!.length)}`,
    roller: () =>
      `Whole repeats round a pillow of ${formatBoth(place.kind === 'roller' ? place.circumference : 0)}`,
    round: () =>
      `Whole repeats round a cloth of ${formatBoth(place.kind === 'round' ? place.diameter : 0)} across`,
    cloth: () =>
      `Whole repeats on the sides of a cloth of ${stretches.map(({ length }) => formatMm(length)).join(' by ')}`,
  }[place.kind]();
  const table = choices.map(
    (choice) => `  ${choice === chosen ? '>' : ' '} ${choiceInWords(choice, spacing)}`,
  );
  return [
    `${what} (">" is taken; the limit is ${percentInWords(limit)})`,
    ...table,
    ...(place.kind === 'roller' && stretches[0]!.length !== place.circumference
      ? [
          `    The card lies outside the pillow, so that in the flat it is ${formatMm(stretches[0]!.length)} long.`,
        ]
      : []),
  ];
}

/** One number of repeats, and what it changes. */
export function choiceInWords(
  { way, counts, scale, ease, cost, fits }: RepeatChoice,
  spacing: number | null,
): string {
  const repeats = `${listInWords(counts.map(String))} repeats`;
  const eased = ease.filter((mm) => Math.abs(mm) >= 0.05);
  const easing =
    eased.length === 0
      ? ''
      : `, ${listInWords(eased.map((mm) => `${formatMm(Math.abs(mm), 1)} ${mm < 0 ? 'held in' : 'stretched'}`))} a side`;
  const size =
    way === 'scale'
      ? `at ${percentInWords(scale)}${spacing === null ? '' : `, footside ${formatMm(spacing * scale)}`}`
      : 'at its own size';
  return `${repeats} ${size}${easing}: changes ${percentInWords(cost)}${fits ? '' : ', over the limit'}`;
}

function copierSection({ factor, copies }: Sizing): string[] {
  if (factor === 1) return [];
  return [
    'To that size',
    '  Best: print the resized pattern (-o, then "pinlight print"). A fresh print is truer than any copy.',
    `  On a photocopier: ${copiesInWords(copies)}.`,
  ];
}

/** 'copy at 70.7 %' or 'copy at 150 %, then copy that at 200 %'. */
export function copiesInWords(copies: CopyChain | null): string {
  if (copies === null) return 'not within three copies; print it anew';
  const { percents, reached, off } = copies;
  if (percents.length === 0) return 'as it is, it is within half a per cent';
  const steps = percents.map((percent, k) =>
    k === 0 ? `copy at ${numberInWords(percent, 1)} %` : `copy that at ${numberInWords(percent, 1)} %`,
  );
  const miss = Math.abs(off) < 0.0005 ? '' : ` (makes ${percentInWords(reached)})`;
  return `${steps.join(', then ')}${miss}`;
}

function threadSection(one: ThreadAtSize, { after }: Sizing): string[] {
  const { thread } = one;
  return [`${thread.name} (${thread.fibre})`, ...threadLines(one, after).map((line) => `  ${line}`)];
}

/** What is known of a thread, and how it suits the pattern. */
export function threadLines({ thread, rightSpacing, here }: ThreadAtSize, { spacing }: Measures): string[] {
  return [
    ...countsInWords(thread),
    ...habitInWords(thread),
    wrapsInWords(thread),
    `${formatMm(thread.wrapped, 3)} thick as it winds on a ruler, ${formatMm(thread.compact, 3)} pulled tight in cloth.`,
    `Just right where footside pins stand ${formatBoth(rightSpacing)} apart.`,
    ...(here && spacing !== null
      ? [
          `At ${formatMm(spacing)}: ${numberInWords(here.wraps, 1)} wraps in the gap; it ${fitInWords[here.fit]}.`,
          ...(here.fit === 'suits'
            ? []
            : [`To suit it, the pattern at ${percentInWords(here.scale)}: ${copiesInWords(here.copies)}.`]),
        ]
      : []),
  ];
}

/** More threads than this are told in a line each. */
const FEW = 2;

/** A folded silk may be far finer than its number lets one think. */
const habitInWords = (thread: Thread): string[] =>
  thread.yarn && eitherHabit(thread)
    ? [
        `Old spun silk numbers the whole thread, not the strand: if this one does, it is far finer. Then write "${formatYarn(thread.yarn)} resultant"; counted wraps tell.`,
      ]
    : [];

const threadLine = ({ thread, rightSpacing, here }: ThreadAtSize): string =>
  `  ${thread.name}: ${numberInWords(thread.wrapsPerCm, 1)} wraps a cm, just right at ${formatMm(rightSpacing)}${
    here ? `, the pattern at ${percentInWords(here.scale)}; as it is, it ${fitInWords[here.fit]}` : ''
  }.`;

/** How a thread suits, after 'it'. */
export const fitInWords: Readonly<Record<Fit, string>> = {
  suits: 'suits',
  'rather-thin': 'is rather thin, the lace comes out open',
  'rather-thick': 'is rather thick, the lace comes out full',
  thin: 'is too thin',
  thick: 'is too thick',
};

/** Systems in which shops sell thread for lace. */
const USUAL: readonly YarnSystem[] = ['NeL', 'Ne', 'Nm', 'tex', 'dtex', 'den'];

function countsInWords({ yarn, tex }: Thread): string[] {
  const said = yarn
    ? USUAL.filter((system) => system !== yarn.system).map((system) => formatYarn(yarn, system))
    : USUAL.map((system) => formatCount(tex, system));
  return [
    `${yarn ? `The whole thread weighs ${formatCount(tex, 'tex')}; in other systems` : 'About, from its wraps'}: ${said.join(', ')}.`,
  ];
}

const wrapsInWords = ({ wrapsPerCm, wrapsFrom }: Thread): string =>
  `${numberInWords(wrapsPerCm, 1)} wraps a cm (${numberInWords(wrapsPerCm * 2.54, 0)} an inch), ${
    wrapsFrom === 'measured'
      ? 'as you counted them.'
      : 'reckoned from its number, right to about a tenth; counting is surer.'
  }`;

function wantedSection(sizing: Sizing): string[] {
  const { spacing } = sizing.after;
  const said = wantedInWords(sizing);
  if (said === null || spacing === null) return [];
  return [`The thread for a footside of ${formatMm(spacing)} (${formatInches(spacing)})`, `  ${said}`];
}

/** The thread that the size asks for; null where nothing tells. */
export function wantedInWords({ wanted }: Sizing): string | null {
  const [first] = wanted;
  if (!first) return null;
  return `${numberInWords(first.wrapsPerCm, 1)} wraps a cm. That is about ${listInWords(wanted.map(({ fibre, tex }) => twofold(fibre, tex)))}.`;
}

const SOLD_BY: Partial<Record<Fibre, YarnSystem>> = { linen: 'NeL', cotton: 'Ne', silk: 'Nm' };

/** A thread of that weight as twofold, as most thread for lace is. */
function twofold(fibre: Fibre, tex: number): string {
  const system = SOLD_BY[fibre] ?? 'tex';
  const count = Number(countOfTex(tex / 2, system).toPrecision(2));
  return `${fibre} ${formatYarn(foldedYarn(system, count, 2))}`;
}

/** The pin, the needle that makes its hole, and what to prefer to either. */
export function pinLines({ pins }: Sizing): string[] {
  if (!pins) return [];
  const { choice, needle } = pins;
  const source = {
    measured: 'as you measured it',
    grid: 'usual for this spacing, from memory',
    thread: 'usual for so fine a thread, from memory',
  }[choice.from];
  const named = needle.needles.slice(0, 2).map(({ label }) => label);
  const others = needle.others.map(({ gauge, size }) => `${gauge} ${size.label}`);
  return [
    `Pins about ${formatMm(choice.pin)} (${formatInches(choice.pin)}) thick, ${source}.`,
    `A needle slightly thinner, so that the card grips the pin: ${formatMm(needle.least)} to ${formatMm(needle.most)}${
      named.length > 0 ? `, such as ${named.join(' or ')}` : ''
    }. Makers\u2019 numbers differ by ${formatMm(NEEDLES_DIFFER)}: measure yours.`,
    ...(others.length === 0 ? [] : [`As thick in other gauges: ${listInWords(others)}.`]),
  ];
}

function pinSection(sizing: Sizing): string[] {
  const lines = pinLines(sizing);
  return lines.length === 0
    ? []
    : ['Pins and needle', ...[...lines, NEEDLE_CAUTION].map((line) => `  ${line}`)];
}

/** What was written, or could be. */
export const resizedInWords = ({ factor, fitted }: Sizing): string =>
  `The pattern is now ${percentInWords(factor)} of its size${
    fitted ? `, for ${countInWords(fitted.chosen.counts[0]!, 'repeat')}` : ''
  }.`;

export const percentInWords = (share: number): string => `${numberInWords(share * 100, 1)} %`;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
