import { formatBoth, formatMm, formatNumber } from '#base/units/format-length.ts';
import type { LibraryEntry } from '#craft/draft/library/entry.ts';
import type { LostEdit } from '#craft/draft/redraft/list.ts';
import type { DraftTrouble, DraftWhy } from '#craft/draft/trouble.ts';
import type { Figure, Takes } from '#pattern/recipe/walk.ts';
import type { DraftJob } from '../draft/draft.ts';
import type { FigureTrouble, RecipeTrouble } from '../trouble.ts';
import { countInWords, listInWords } from './number.ts';
import { quoted, visible } from './quoted.ts';

/** Why there is nothing to draft from, and what to do. */
export function recipeTroubleInWords(trouble: RecipeTrouble): string {
  switch (trouble.kind) {
    case 'no-recipe':
      return 'This pattern keeps no recipe: it was traced, drawn by hand or arranged since it was drafted. Draft it from a recipe file, or from the library ("pinlight draft --list").';
    case 'unknown-recipe':
      return `There is no recipe ${quoted(trouble.name)} in the library, and no such file. The library has ${listInWords(trouble.names)}.`;
  }
}

/** What a door calls a figure by: its path, unless it has words of its own for it. */
export type FigureNamer = (path: string) => string;

/** Which figure of a recipe cannot be met, its limits, and the nearest that works. */
export function figureTroubleInWords(trouble: FigureTrouble, nameOf: FigureNamer = visible): string {
  switch (trouble.kind) {
    case 'missing-figure': {
      const { figure, means } = trouble;
      return `So the recipe needs ${visible(figure)} as well. Set it too, as --set ${visible(figure)}=…${meaning(nameOf(figure), means)}`;
    }
    case 'unknown-figure':
      return `This recipe has no figure ${quoted(trouble.figure)}. It has ${listInWords(trouble.figures)}.`;
    case 'bad-figure': {
      const { figure, given, takes, means } = trouble;
      return `${nameOf(figure)} cannot be ${quoted(given)}. It takes ${takesInWords(takes)}.${meaning(nameOf(figure), means)}`;
    }
    case 'recipe-figure':
      return draftTrouble(trouble, nameOf(trouble.figure));
  }
}

function draftTrouble(trouble: DraftTrouble & { readonly means: string | null }, figure: string): string {
  const { given, unit, least, most, nearest, why, means } = trouble;
  const said = (value: number) => inUnit(value, unit);
  const limits =
    least !== undefined && most !== undefined
      ? least > most
        ? ' No figure works here while the others stay as they are.'
        : ` Here it can be from ${said(least)} to ${said(most)}.`
      : least !== undefined
        ? ` Here it must be at least ${said(least)}.`
        : most !== undefined
          ? ` Here it can be at most ${said(most)}.`
          : '';
  // Some figures have one more choice beyond their limit, such as a whole ring beyond the widest fan.
  const isBeyond = nearest !== undefined && (nearest > (most ?? nearest) || nearest < (least ?? nearest));
  if (isBeyond && limits !== '') {
    return `The figure ${figure} cannot be ${said(given)}: ${WHY[why]}.${limits.replace(/\.$/, '')}, or ${said(nearest)}, which is nearest.${meaning(figure, means)}`;
  }
  const next =
    nearest === undefined
      ? ' Change it or the figures round it.'
      : ` The nearest that works is ${said(nearest)}.`;
  return `The figure ${figure} cannot be ${said(given)}: ${WHY[why]}.${limits}${next}${meaning(figure, means)}`;
}

const WHY: Readonly<Record<DraftWhy, string>> = {
  'pins-too-close': 'the pins would stand closer together than two holes can',
  'pins-too-far': 'the pins would stand too far apart to hold the edge',
  'too-many-pins': 'that makes more pins than a pattern can have',
  'too-large': 'the pattern would reach farther than 100 m from its origin',
  'too-few-pins': 'the pins would stand too far apart to hold the outline',
  'repeat-does-not-divide': 'that does not go into the repeat a whole number of times',
  'corner-does-not-divide': 'that leaves no whole repeats from corner to corner',
  'too-narrow': 'that is too narrow for what should stand in it',
  'does-not-fit': 'that does not fit beside the other figures',
  'in-the-way': 'it would lie on something else that is drafted there',
  'off-the-lattice': 'that is no place of the lattice',
  'bend-too-tight': 'the lace cannot follow so tight a bend',
  'crosses-too-tightly': 'it would cross itself at too sharp an angle, or too near another crossing',
  'crosses-itself': 'the outline crosses itself there',
  'leaves-no-ground': 'that leaves no pin where ground should stand',
  'motifs-overlap': 'this motif would lie on another, or too near it',
};

const meaning = (figure: string, means: string | null): string =>
  means === null ? '' : ` (${figure}: ${means.replace(/\.$/, '')}.)`;

const inUnit = (value: number, unit: DraftTrouble['unit']): string =>
  unit === 'mm' ? formatMm(value, 3) : unit === 'degrees' ? `${formatNumber(value, 3)} degrees` : `${value}`;

/** '3 to 11', 'a length from 0.1 mm to 20 mm', 'plain or doubled'. */
export function takesInWords(takes: Takes): string {
  switch (takes.kind) {
    case 'length':
      return `a length from ${formatMm(takes.least, 3)} to ${formatMm(takes.most, 3)}`;
    case 'number':
      return `a number from ${takes.least} to ${takes.most}`;
    case 'count':
      return `a whole number from ${takes.least} to ${takes.most}`;
    case 'word':
      return takes.words.length === 1
        ? takes.words[0]!
        : `${takes.words.slice(0, -1).join(', ')} or ${takes.words.at(-1)}`;
    case 'yes-or-no':
      return 'yes or no';
    case 'text':
      return 'a text';
  }
}

/** What was drafted, and what became of the edits made by hand. */
export function draftInWords({ file, kept, lost, width, height, from }: DraftJob): string[] {
  const { pins, about } = file.pattern;
  const name = about.name === undefined ? '' : ` ${quoted(about.name)}`;
  const lines = [
    `Drafted${name}: ${countInWords(pins.length, 'pin')}, ${formatBoth(width)} across and ${formatBoth(height)} down.`,
  ];
  if (from === 'pattern' && kept > 0) {
    lines.push(`${countInWords(kept, 'edit')} made by hand ${kept === 1 ? 'is' : 'are'} kept.`);
  }
  if (lost.length > 0) {
    lines.push(
      `${countInWords(lost.length, 'edit')} made by hand could not be kept; the pattern that was drafted from still has ${lost.length === 1 ? 'it' : 'them'}:`,
      ...lost.slice(0, MOST_TOLD).map((edit) => `  - ${lostInWords(edit)}`),
      ...(lost.length > MOST_TOLD ? [`  - and ${lost.length - MOST_TOLD} more`] : []),
    );
  }
  return lines;
}

const MOST_TOLD = 20;

/** 'The pin g6.2 was changed, and is no longer drafted.' */
export function lostInWords({ list, id, edit, gone }: LostEdit): string {
  const was = `The ${ONE[list]} ${visible(id)} was ${edit === 'added' ? 'put in' : 'changed'}`;
  if (gone.length === 0) return `${was}, and is no longer drafted.`;
  const named = gone.length > 6 ? [...gone.slice(0, 5), `${gone.length - 5} more`] : gone;
  return `${was}, and ${gone.length === 1 ? 'its pin' : 'its pins'} ${visible(listInWords(named))} ${gone.length === 1 ? 'is' : 'are'} gone.`;
}

const ONE = { pins: 'pin', runs: 'run', marks: 'marking', areas: 'area' } as const;

/** The library as a page to choose from. */
export function libraryInWords(entries: readonly LibraryEntry[]): string {
  const widest = Math.max(...entries.map(({ name }) => name.length));
  return entries.map(({ name, title }) => `${name.padEnd(widest)}  ${title}\n`).join('');
}

/** The figures of a recipe as a page: what each is now, what it can be, what it means. */
export function figuresInWords(figures: readonly Figure[]): string {
  return figures
    .map(({ path, value, takes, means }) => {
      const now = takes.kind === 'length' ? formatMm(Number(value), 3) : `${value}`;
      const can = takes.kind === 'word' && takes.words.length === 1 ? '' : `  (${takesInWords(takes)})`;
      return `${path} = ${now}${can}\n${means === null ? '' : `    ${means}\n`}`;
    })
    .join('');
}
