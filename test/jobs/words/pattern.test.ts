import { describe, expect, test } from 'vitest';
import { containerTroubleInWords } from '#jobs/words/container.ts';
import { lengthTroubleInWords } from '#jobs/words/length.ts';
import { patternTroubleInWords, placeInWords } from '#jobs/words/pattern.ts';
import { readPattern } from '#pattern/file/read.ts';

const words = (text: string) => {
  const read = readPattern(text);
  return read.ok ? 'opened' : patternTroubleInWords(read.trouble);
};

describe('a trouble with a file says what, where, and what to do next', () => {
  test.each<[string, string]>([
    [
      '',
      'The file ends too early, at line 1, column 1: it is empty or cut off, so it is not whole JSON. If it was copied or sent, copy it again.',
    ],
    [
      '{"pins":[\n{"x":1,"y":2},]}',
      'The file is not JSON: at line 2, column 15 stands "]", which cannot stand there. Compare that place with a file that opens, or make the file anew.',
    ],
    ['{"pins":[{"x":1}]}', 'Something is missing: pin 1, y (pins[0].y). Put it in and open the file again.'],
    [
      '{"pins":[{"x":"1","y":2}]}',
      'At pin 1, x (pins[0].x) there should be a number, and there is a text "…". Correct it and open the file again.',
    ],
    [
      '{"pins":[],"pegs":[]}',
      '"pegs" at the top of the file is not a word of the pattern format. Correct its spelling, or take it out.',
    ],
    [
      '{"pins":[{"x":0,"y":0,"size":1}]}',
      '"size" at pin 1 (pins[0]) is not a word of the pattern format. Correct its spelling, or take it out.',
    ],
    [
      '{"pins":[{"id":"a","x":0,"y":0},{"id":"a","x":0,"y":0}]}',
      'The id "a" is used twice: by pin 1 and by pin 2. Give one of them another id, or none.',
    ],
    [
      '{"pins":[],"runs":[{"pins":["a","b"],"shape":"line"}]}',
      'Run 1, pins 1 (runs[0].pins[0]) speaks of the pin "a", and there is no such pin. Correct the id, or take out what speaks of it.',
    ],
    [
      '{"version":3,"pins":[]}',
      'The file is of version 3, and this program knows versions up to 2. Nothing is wrong with the file: get a newer Pinlight to open it.',
    ],
    [
      '{"pins":[{"x":1e999,"y":0}]}',
      'The number at pin 1, x (pins[0].x) is too large for any pattern. Correct it and open the file again.',
    ],
  ])('%s', (text, sentence) => {
    expect(words(text)).toBe(sentence);
  });

  test('a character that cannot be seen is named by its number', () => {
    expect(words('{"pins":[\u0000]}')).toContain('the character U+0000,');
    expect(words('{"pins":[\u202e]}')).toContain('the character U+202E,');
  });
});

test('nothing in a file can steer a terminal or turn a sentence round', () => {
  const key = JSON.stringify('a\u001b[2J\u202eb\u009b');
  for (const text of [
    `{"pins":[],${key}:1}`,
    `{"pins":[],"format":${key}}`,
    `{"pins":[],"version":${key}}`,
  ]) {
    expect(words(text)).toMatch(/^[\P{C}]+$/u);
  }
  expect(words(`{"pins":[],${key}:1}`)).toMatch(/^"a<U\+001B>\[2J<U\+202E>b<U\+009B>" at the top/);
});

test('places are counted as people count, with the file’s own words behind', () => {
  expect(placeInWords(['marks', 4, 'path', 2, 'pin'])).toBe('mark 5, path 3 pin (marks[4].path[2].pin)');
  expect(placeInWords(['scale', 'dpi'])).toBe('scale.dpi');
  expect(placeInWords([])).toBe('the top of the file');
});

test('a trouble inside a container names the entry', () => {
  expect(
    containerTroubleInWords({ kind: 'in-entry', name: 'pattern.json', trouble: { kind: 'not-utf8' } }),
  ).toMatch(/^In "pattern.json" inside the file: The file is not text in UTF-8/);
});

test('a length that was not understood is shown again', () => {
  expect(lengthTroubleInWords({ kind: 'two-marks', text: '1.234,5' })).toBe(
    '"1.234,5" has more than one point or comma. Either is taken as the decimal mark: type it once, and nothing between thousands.',
  );
});
