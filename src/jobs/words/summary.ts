import type { PaperSize } from '#base/units/paper.ts';
import type { Finding } from '#craft/look/finding.ts';
import type { HandEffort } from '#craft/route/effort.ts';
import type { SummarySection } from '#paper/sheet/summary.ts';
import { doubtInWords } from '#pattern/doubt-words.ts';
import type { Pattern, Pin } from '#pattern/pattern.ts';
import type { TrueResult } from '../results/true.ts';
import { findingsCountInWords } from './look.ts';
import { countInWords, listInWords, numberInWords } from './number.ts';
import { structuresInWords } from './true.ts';

interface TruedPattern {
  readonly pattern: Pattern;
  readonly result: TrueResult;
}

/** What the summary tells of. */
export interface SummaryOf {
  readonly input: { readonly notes: readonly string[] };
  readonly weighed: { readonly pattern: { readonly pins: readonly Pin[] }; readonly leftOut: readonly Pin[] };
  readonly trued: TruedPattern;
  readonly findings: readonly Finding[];
  readonly through: {
    readonly sheets: readonly unknown[];
    readonly notes: readonly string[];
    readonly effort: HandEffort;
  };
  readonly paper: PaperSize;
}

/** At most so many of each kind are told one by one; the rest stands in the list of findings. */
const MOST = 6;

/** The summary, in words: what was found, moved, proposed and is in doubt, and what to do next. */
export function summaryInSections(of: SummaryOf): SummarySection[] {
  const sections: SummarySection[] = [
    { heading: 'What was found', text: foundText(of), items: few(of.weighed.leftOut.map(leftOutInWords)) },
    { heading: 'What was moved', text: movedText(of.trued) },
    proposedSection(of.trued),
    doubtSection(of.weighed.pattern.pins),
    lookedSection(of.findings),
    { heading: 'What to do next', items: nextSteps(of).map((words) => ({ words, toDo: true })) },
  ];
  return sections.filter(({ text, items }) => (text?.length ?? 0) + (items?.length ?? 0) > 0);
}

/** The same as plain text, 76 letters wide. */
export function summaryText(sections: readonly SummarySection[]): string {
  const parts = sections.map(({ heading, text, items }) => {
    const lines = [
      heading.toUpperCase(),
      ...(text ?? []).flatMap((line) => wrapped(line, '', '')),
      ...(items ?? []).flatMap(({ words, toDo }) => wrapped(words, toDo ? '[ ] ' : '  - ', '    ')),
    ];
    return lines.join('\n');
  });
  return `${parts.join('\n\n')}\n`;
}

function foundText({ input, weighed, trued }: SummaryOf): string[] {
  const { pins } = weighed.pattern;
  const text = [
    `${countInWords(pins.length, 'pin')} in all.`,
    ...input.notes.filter((note) => !/ found[,.]/.test(note)),
  ];
  const { marks } = trued.pattern;
  const lines = marks.filter(({ kind }) => kind === 'line').length;
  if (lines > 0) text.push(`${countInWords(lines, 'working line')} between them came along.`);
  if (weighed.leftOut.length > 0) {
    text.push(
      `${countInWords(weighed.leftOut.length, 'mark')} on the paper may be ${weighed.leftOut.length === 1 ? 'a pin and was' : 'pins and were'} left out, because ${weighed.leftOut.length === 1 ? 'it is' : 'they are'} more likely none. Look at ${weighed.leftOut.length === 1 ? 'it' : 'each'}:`,
    );
  }
  return text;
}

const leftOutInWords = (pin: Pin): string => `${placeOf(pin)}: ${reasonsOf(pin)}`;

const placeOf = ({ x, y }: { readonly x: number; readonly y: number }): string =>
  `${numberInWords(x, 1)} mm across, ${numberInWords(y, 1)} mm down`;

const reasonsOf = ({ doubt }: Pin): string =>
  doubt === undefined || doubt.length === 0
    ? 'it is not clear'
    : `it ${listInWords(doubt.map((one) => doubtInWords[one]))}`;

function movedText({ result }: TruedPattern): string[] {
  const { pins, structures, moved } = result;
  if (structures.length === 0) return ['Nothing regular was found, so that no pin was moved.'];
  const held = pins.filter(({ structure }) => structure !== null).length;
  const free = pins.length - held;
  return [
    `${held} of ${countInWords(pins.length, 'pin')} belong to ${structuresInWords(structures)}.`,
    moved.pins === 0
      ? 'All of them stand true already.'
      : `${countInWords(moved.pins, 'pin')} moved on to them, the farthest by ${numberInWords(moved.farthest, 2)} mm.`,
    ...(free > 0
      ? [
          `${countInWords(free, 'pin')} ${free === 1 ? 'belongs' : 'belong'} to none of them and ${free === 1 ? 'stays' : 'stay'} exactly where ${free === 1 ? 'it was' : 'they were'}.`,
        ]
      : []),
  ];
}

function proposedSection({ result }: TruedPattern): SummarySection {
  const { missing, stray, pins } = result;
  return {
    heading: 'What is proposed, and not done',
    text: [
      ...(missing.length > 0
        ? [
            `${countInWords(missing.length, 'pin')} ${missing.length === 1 ? 'seems' : 'seem'} to be missing. Put ${missing.length === 1 ? 'it' : 'them'} in with "true --add-missing", or by hand on the paper:`,
          ]
        : []),
    ],
    items: [
      ...few(
        missing.map((one) => `${placeOf(one)}: ${one.why} (${Math.round(one.confidence * 100)} % sure)`),
      ),
      ...few(
        stray.map(
          (index) => `${placeOf(pins[index]!)}: pin ${index + 1} seems stray; it belongs to nothing round it`,
        ),
      ),
    ],
  };
}

function doubtSection(pins: readonly Pin[]): SummarySection {
  const doubtful = pins.filter(({ doubt }) => doubt !== undefined && doubt.length > 0);
  return {
    heading: 'What is in doubt',
    text:
      doubtful.length > 0
        ? [
            `${countInWords(doubtful.length, 'pin')} ${doubtful.length === 1 ? 'is' : 'are'} more likely than not, and not certain:`,
          ]
        : [],
    items: few(
      doubtful.map(
        (pin) => `${placeOf(pin)}: ${reasonsOf(pin)} (${Math.round((pin.confidence ?? 0) * 100)} % sure)`,
      ),
    ),
  };
}

function lookedSection(findings: readonly Finding[]): SummarySection {
  const telling = findings.filter(({ severity }) => severity !== 'note');
  const rest = findings.length - Math.min(telling.length, MOST);
  return {
    heading: 'Looked over',
    text: [findingsCountInWords(findings), ...(rest > 0 ? ['All of them stand in 03-looked-over.txt.'] : [])],
    items: telling.slice(0, MOST).map(({ sentence }) => ({ words: sentence })),
  };
}

function nextSteps({ through, paper, findings }: SummaryOf): string[] {
  const faults = findings.some(({ severity }) => severity === 'fault');
  return [
    ...(faults
      ? ['Put the faults right first: straighten again with other choices, or mark them on the paper.']
      : []),
    'Look at 02-before-and-after: is there a move or a proposal that you do not want?',
    'Choose your way: 04-prick-through.pdf, or 05-under-film.pdf.',
    `Print it on ${paper.name} at 100 % ("actual size"), and measure both rulers: 100 mm each.`,
    `Prick in the order of the guide, which is the last sheet: ${effortInWords(through.effort)}.`,
    'Hold the card up to the light: a hole that was missed shows as a gap. A photo of it so can be checked hole by hole: pinlight light 06-pattern-straightened.json photo.jpg',
    ...through.notes,
  ];
}

/** A pace of our own guess: each maker has her own. */
const effortInWords = ({ holes, settings, minutes }: HandEffort): string =>
  `${countInWords(holes, 'hole')}${settings > 0 ? `, ${countInWords(settings, 'line')} along a ruler` : ''}, roughly ${countInWords(minutes, 'minute')} without a rest`;

function few(words: readonly string[]): { words: string }[] {
  const told = words.slice(0, MOST).map((one) => ({ words: one }));
  return words.length <= MOST ? told : [...told, { words: `and ${words.length - MOST} more` }];
}

function wrapped(text: string, first: string, next: string): string[] {
  const lines: string[] = [];
  let line = first;
  for (const word of text.split(' ')) {
    if (line.length + word.length > 75 && line.trim() !== '') {
      lines.push(line.trimEnd());
      line = next;
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()];
}
