import type { Affine } from '#base/geometry/affine.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { MissingPin, Structure } from '#pattern/structure.ts';
import type { TrueResult } from '../results/true.ts';
import type { TrueTrouble } from '../trouble.ts';
import { countInWords, listInWords, numberInWords } from './number.ts';

/** Why a pattern cannot be straightened as asked, and what to do next. */
export function trueTroubleInWords(trouble: TrueTrouble): string {
  switch (trouble.kind) {
    case 'unknown-pin':
      return `There is no pin "${trouble.pin}". Name a pin by its id, or by its place counted from 0.`;
    case 'same-pins':
      return `The pins "${trouble.from}" and "${trouble.to}" stand on one spot. Take two pins far apart.`;
    case 'unknown-part':
      return trouble.parts.length === 0
        ? `There is no part "${trouble.part}": nothing regular was found in this pattern.`
        : `There is no part "${trouble.part}". The parts are ${listInWords(shortened(trouble.parts))}.`;
    case 'no-ground':
      return 'No ground was found whose angle could be made true. Leave the angle out.';
  }
}

const shortened = (words: readonly string[]): readonly string[] =>
  words.length <= 12 ? words : [...words.slice(0, 11), `${words.length - 11} more`];

/** 'straight line 3': a structure among others, where its id is not needed. Ids end in their number. */
export const numberedName = (structure: Structure): string =>
  `${structureName(structure)} ${structure.id.slice(structure.id.lastIndexOf('-') + 1)}`;

/** Why a pin seems to be missing. */
export function missingInWords({ why, structure }: MissingPin): string {
  switch (why) {
    case 'lattice':
    case 'polar':
      return `the pins round it on ${structure} leave this place empty`;
    case 'run':
      return `the pins before and after it on ${structure} stand a step too far apart`;
    case 'repeat':
      return 'the other repeats have a pin here';
    case 'symmetry':
      return 'the other side has a pin here';
  }
}

/** What straightening found and did, in a few sentences. */
export function trueInWords(
  result: TrueResult,
  choice: { readonly added: number; readonly dropped: number },
): string[] {
  const { pins, structures, moved, missing, stray, unit } = result;
  const held = pins.filter(({ structure }) => structure !== null).length;
  const lines = [foundInWords(pins.length, held, structures)];
  if (structures.length > 0) lines.push(movedInWords(moved, `${numberInWords(moved.farthest, 2)} ${unit}`));
  if (missing.length > 0)
    lines.push(proposed(missing.length, 'missing', choice.added, '--add-missing puts them in'));
  if (stray.length > 0)
    lines.push(proposed(stray.length, 'stray', choice.dropped, '--drop-stray takes them out'));
  return lines;
}

/** '412 of 420 pins belong to 2 lattices and 5 straight lines.' */
export const foundInWords = (
  pins: number,
  held: number,
  structures: readonly Pick<Structure, 'kind'>[],
): string =>
  structures.length === 0
    ? `Nothing regular was found among ${countInWords(pins, 'pin')}; every pin stays where it is.`
    : `${held} of ${countInWords(pins, 'pin')} belong to ${structuresInWords(structures)}.`;

/** How many pins moved, and how far at most. */
export const movedInWords = (moved: { readonly pins: number }, farthest: string): string =>
  moved.pins === 0
    ? 'All of them stand true already; nothing was moved.'
    : `${countInWords(moved.pins, 'pin')} moved, the farthest by ${farthest}.`;

/** What taking parts of a proposal does to the pins: before it is done, and afterwards. */
export function takenInWords(
  taken: { readonly moved: number; readonly added: number; readonly dropped: number; readonly copy: boolean },
  farthest: string,
  tense: 'would' | 'did',
): string {
  const will = tense === 'would' ? ' would be' : '';
  const was = (many: number) => will || (many === 1 ? ' was' : ' were');
  const { moved, added, dropped, copy } = taken;
  const said = [
    ...(moved > 0
      ? [
          `${countInWords(moved, 'pin')} ${tense === 'would' ? 'would move' : 'moved'}, the farthest by ${farthest}`,
        ]
      : []),
    ...(copy ? [`the whole copy${was(1)} put right`] : []),
    ...(added > 0 ? [`${countInWords(added, 'missing pin')}${was(added)} put in`] : []),
    ...(dropped > 0 ? [`${countInWords(dropped, 'stray pin')}${was(dropped)} taken out`] : []),
  ];
  const sentence =
    said.length === 0 ? `nothing ${tense === 'would' ? 'would change' : 'changed'}` : said.join('; ');
  return `${sentence[0]!.toUpperCase()}${sentence.slice(1)}.`;
}

/** What copying did to the whole, from the map that undoes it. */
export function copyInWords({ a, b, c, d }: Affine, unit: Pattern['unit']): string {
  const [across, down] = [Math.hypot(a, b), Math.hypot(c, d)];
  const skew = (Math.asin(Math.min(1, Math.abs(a * c + b * d) / (across * down))) * 180) / Math.PI;
  const size =
    unit === 'mm'
      ? `made ${percent(across)} across and ${percent(down)} down`
      : `a pixel is ${numberInWords(across, 4)} mm across and ${numberInWords(down, 4)} mm down`;
  return `${size}, and skewed by ${numberInWords(skew, 2)}°`;
}

const percent = (share: number): string => `${numberInWords(share * 100, 2)} %`;

function proposed(many: number, what: 'missing' | 'stray', taken: number, how: string): string {
  const said = `${countInWords(many, 'pin')} ${many === 1 ? 'seems' : 'seem'} ${what === 'stray' ? 'to be stray' : 'to be missing'}`;
  if (taken === many) return `${said}, and ${what === 'missing' ? 'put in' : 'taken out'}.`;
  return taken === 0
    ? `${said}; that is only a proposal (${how}).`
    : `${said}; ${taken} of them ${what === 'missing' ? 'put in' : 'taken out'}.`;
}

/** '2 lattices, 5 lines and 1 curve'. */
export function structuresInWords(structures: readonly Pick<Structure, 'kind'>[]): string {
  const names = structures.map((one) => structureName(one as Structure));
  return listInWords(
    [...new Set(names)].map((name) => countInWords(names.filter((other) => other === name).length, name)),
  );
}

/** 'straight line', 'lattice': what was found, in the words of the trade. */
export function structureName(structure: Structure): string {
  switch (structure.kind) {
    case 'lattice':
      return 'lattice';
    case 'polar':
      return 'ring ground';
    case 'run':
      return { line: 'straight line', arc: 'arc', curve: 'curve' }[structure.shape];
    case 'repeat':
      return 'repeat';
    case 'mirror':
      return 'mirror';
    case 'turn':
      return 'turn';
  }
}
