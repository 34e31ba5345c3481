import type { TooLarge } from '#pattern/json/parse.ts';
import type { ListName, Path, PatternTrouble, ShapeReason } from '#pattern/trouble.ts';
import { codeOf, quoted, visible } from './quoted.ts';

/** Why a file cannot be opened as a pattern, where, and what to do next. */
export function patternTroubleInWords(trouble: PatternTrouble): string {
  switch (trouble.kind) {
    case 'not-json':
      return notJson(trouble.line, trouble.column, trouble.found);
    case 'not-utf8':
      return 'The file is not text in UTF-8. If it is a picture, trace it; if it is a pattern, save it again as UTF-8.';
    case 'too-large':
      return tooLarge(trouble.what, trouble.size, trouble.limit);
    case 'too-many':
      return `There are ${trouble.count} entries in ${placeInWords(trouble.path)}; at most ${trouble.limit} can be opened. Split the pattern into parts.`;
    case 'not-a-pattern':
      return trouble.format === null
        ? 'This is not a pattern: the file holds no { … } with pins in it. Open the pattern file itself, or trace a picture first.'
        : `This is not a pattern: the file says that its format is ${visible(trouble.format)}. Open a pattern file, or trace a picture first.`;
    case 'newer-version':
      return `The file is of version ${trouble.version}, and this program knows versions up to ${trouble.newest}. Nothing is wrong with the file: get a newer Pinlight to open it.`;
    case 'unknown-version':
      return `The file says that its version is ${visible(trouble.version)}; a version is a whole number from 1. Correct it, or take the line with "version" out.`;
    case 'not-finite':
      return `The number at ${placeInWords(trouble.path)} is too large for any pattern. Correct it and open the file again.`;
    case 'wrong-shape':
      return wrongShape(trouble.path, trouble.reason);
    case 'duplicate-id':
      return `The id "${trouble.id}" is used twice: by ${recordInWords(trouble.list, trouble.first)} and by ${recordInWords(trouble.list, trouble.second)}. Give one of them another id, or none.`;
    case 'dangling-reference':
      return `${capital(placeInWords(trouble.path))} speaks of the pin "${trouble.pin}", and there is no such pin. Correct the id, or take out what speaks of it.`;
  }
}

/** A place in a file as people count, with the file's own words behind it: `pin 3, x (pins[2].x)`. */
export function placeInWords(path: Path): string {
  if (path.length === 0) return 'the top of the file';
  const [list, index, ...rest] = path;
  const code = path
    .map((step, i) => (typeof step === 'number' ? `[${step}]` : `${i === 0 ? '' : '.'}${step}`))
    .join('');
  if (typeof index !== 'number' || !isListName(list)) return visible(code);
  const inner = rest.map((step) => (typeof step === 'number' ? `${step + 1}` : step)).join(' ');
  return visible(`${recordInWords(list, index)}${inner && `, ${inner}`} (${code})`);
}

const SINGULAR: Readonly<Record<ListName, string>> = {
  pins: 'pin',
  runs: 'run',
  marks: 'mark',
  areas: 'area',
};

const isListName = (step: string | number | undefined): step is ListName =>
  typeof step === 'string' && Object.hasOwn(SINGULAR, step);

const recordInWords = (list: ListName, index: number): string => `${SINGULAR[list]} ${index + 1}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function notJson(line: number, column: number, found: string | null): string {
  const next = 'Compare that place with a file that opens, or make the file anew.';
  if (found === null) {
    return `The file ends too early, at line ${line}, column ${column}: it is empty or cut off, so it is not whole JSON. If it was copied or sent, copy it again.`;
  }
  if (line === 1 && column === 1) {
    return `This is no file that can be read here: it begins with ${charInWords(found)}, so it is not JSON. Choose another one.`;
  }
  return `The file is not JSON: at line ${line}, column ${column} stands ${charInWords(found)}, which cannot stand there. ${next}`;
}

function charInWords(char: string): string {
  if (/^[\p{L}\p{N}\p{P}\p{S}]$/u.test(char)) return char === '"' ? 'a "' : `"${char}"`;
  return `the character U+${codeOf(char)}`;
}

function tooLarge(what: TooLarge, size: number, limit: number): string {
  switch (what) {
    case 'bytes':
      return `The file is too large: it has ${size} bytes, and at most ${limit} are read. If it is a picture, trace it; if it is a pattern, split it into parts.`;
    case 'text':
      return `The file is too large: it has ${size} characters, and at most ${limit} can be opened. Split the pattern into parts.`;
    case 'values':
      return `The file is too large: it holds about ${size} values, and at most ${limit} can be opened. Split the pattern into parts.`;
    case 'depth':
      return `The brackets in the file lie ${size} deep in each other; a pattern needs no more than ${limit}. This is not a pattern file.`;
  }
}

function wrongShape(path: Path, reason: ShapeReason): string {
  const place = placeInWords(path);
  switch (reason.kind) {
    case 'missing':
      return `Something is missing: ${place}. Put it in and open the file again.`;
    case 'unknown-key':
      return `${quoted(reason.key)} at ${place} is not a word of the pattern format. Correct its spelling, or take it out.`;
    case 'wrong-type':
      return `At ${place} there should be ${typeInWords(reason.expected)}, and there is ${typeInWords(reason.found)}. Correct it and open the file again.`;
    case 'not-one-of':
      return `At ${place} there should be ${reason.allowed.map((word) => `"${word}"`).join(' or ')}. Correct it and open the file again.`;
    case 'too-small':
      return `The number at ${place} is too small: the least is ${reason.minimum}. Correct it and open the file again.`;
    case 'too-big':
      return `The number at ${place} is too large: the most is ${reason.maximum}. Correct it and open the file again.`;
    case 'too-few':
      return `There are too few entries at ${place}: it takes at least ${reason.minimum}. Add what is missing, or take the whole out.`;
    case 'text-too-long':
      return `The text at ${place} is too long: the most is ${reason.maximum} characters. Shorten it and open the file again.`;
    case 'bad-text':
      return `The text at ${place} is not ${wantedInWords(reason.wanted)}. Correct it and open the file again.`;
    case 'not-an-anchor':
      return `At ${place} there should be a pin, as {"pin": "p1"}, or a place, as {"x": 1, "y": 2}. Correct it and open the file again.`;
    case 'zero-step':
      return `The repeat at ${place} has no length. Give the way from a pin to the same pin of the next repeat, or take the repeat out.`;
    case 'flat-map':
      return `The map at ${place} flattens the picture to a line or a point. Correct it, or take the picture out.`;
    case 'other':
      return `What stands at ${place} does not fit the pattern format. Compare it with the description of the format.`;
  }
}

function wantedInWords(wanted: 'id' | 'tint' | 'hash' | 'entry'): string {
  switch (wanted) {
    case 'id':
      return 'an id: letters, digits and . _ : - only, a letter or digit first';
    case 'tint':
      return 'a colour as "#c0ffee": # and six of 0-9 and a-f';
    case 'hash':
      return 'a SHA-256: 64 of 0-9 and a-f';
    case 'entry':
      return 'a plain file name: letters, digits and . _ - only, a letter or digit first';
  }
}

function typeInWords(type: string): string {
  switch (type) {
    case 'array':
      return 'a list [ … ]';
    case 'object':
    case 'record':
      return 'an object { … }';
    case 'string':
      return 'a text "…"';
    case 'number':
      return 'a number';
    case 'int':
      return 'a whole number';
    case 'boolean':
      return 'true or false';
    case 'null':
      return 'nothing (null)';
    default:
      return type;
  }
}
