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
      return `The pins "${trouble.from}" and "${trouble.to}" of --known stand on one spot. Take two pins far apart.`;
    case 'unknown-part':
      return trouble.parts.length === 0
        ? `There is no part "${trouble.part}": nothing regular was found in this pattern.`
        : `There is no part "${trouble.part}". The parts are ${listInWords(shortened(trouble.parts))}.`;
    case 'no-ground':
      return 'No ground was found whose angle could be made true. Leave --angle out.';
  }
}

const shortened = (words: readonly string[]): readonly string[] =>
  words.length <= 12 ? words : [...words.slice(0, 11), `${words.length - 11} more`];

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
  const lines = [
    structures.length === 0
      ? `Nothing regular was found among ${countInWords(pins.length, 'pin')}; every pin stays where it is.`
      : `${held} of ${countInWords(pins.length, 'pin')} belong to ${structuresInWords(structures)}.`,
  ];
  if (structures.length > 0) {
    lines.push(
      moved.pins === 0
        ? 'All of them stand true already; nothing was moved.'
        : `${countInWords(moved.pins, 'pin')} moved, the farthest by ${numberInWords(moved.farthest, 2)} ${unit}.`,
    );
  }
  if (missing.length > 0)
    lines.push(proposed(missing.length, 'missing', choice.added, '--add-missing puts them in'));
  if (stray.length > 0)
    lines.push(proposed(stray.length, 'stray', choice.dropped, '--drop-stray takes them out'));
  return lines;
}

function proposed(many: number, what: 'missing' | 'stray', taken: number, how: string): string {
  const said = `${countInWords(many, 'pin')} ${many === 1 ? 'seems' : 'seem'} ${what === 'stray' ? 'to be stray' : 'to be missing'}`;
  if (taken === many) return `${said}, and ${what === 'missing' ? 'put in' : 'taken out'}.`;
  return taken === 0
    ? `${said}; that is only a proposal (${how}).`
    : `${said}; ${taken} of them ${what === 'missing' ? 'put in' : 'taken out'}.`;
}

/** '2 lattices, 5 lines and 1 curve'. */
export function structuresInWords(structures: readonly Pick<Structure, 'kind'>[]): string {
  const names = structures.map((one) => nameOf(one as Structure));
  return listInWords(
    [...new Set(names)].map((name) => countInWords(names.filter((other) => other === name).length, name)),
  );
}

function nameOf(structure: Structure): string {
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
