import { readFileSync, writeFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { patternJsonSchema } from '#pattern/file/json-schema.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import { arbitraryPattern } from '../support/arbitrary-pattern.ts';

const published = new URL('../../docs/schema/pattern.schema.json', import.meta.url);
const schemaText = `${JSON.stringify(patternJsonSchema(), null, 2)}\n`;

test('the published schema is the present one (UPDATE_SCHEMA=1 writes it anew)', () => {
  if (process.env.UPDATE_SCHEMA) writeFileSync(published, schemaText);
  expect(readFileSync(published, 'utf8')).toBe(schemaText);
});

// Ajv, an independent validator of JSON Schema, must judge every file as the reader does.
const validate = new Ajv2020({ strict: true, allErrors: false }).compile(JSON.parse(schemaText));

/** Whether the reader takes the shape of a file; what lies beyond shape (ids, references) counts as taken. */
function readerTakes(text: string): boolean {
  const read = readPattern(text);
  if (read.ok) return true;
  const { trouble } = read;
  if (trouble.kind === 'duplicate-id' || trouble.kind === 'dangling-reference') return true;
  return trouble.kind === 'wrong-shape' && /zero-step|flat-map/.test(trouble.reason.kind);
}

describe('Ajv and the reader agree', () => {
  test('on whole patterns (seed 2020)', () => {
    fc.assert(
      fc.property(arbitraryPattern(), (pattern) => {
        expect(validate(JSON.parse(writePattern(pattern))) || validate.errors).toBe(true);
      }),
      { seed: 2020, numRuns: 100 },
    );
  });

  test('on files in which one thing was replaced or added (seed 88)', () => {
    const odd = fc.constantFrom<unknown>(
      null,
      true,
      false,
      0,
      1,
      -1,
      0.5,
      0.0001,
      1e5,
      100_001,
      -100_001,
      65_536,
      '',
      'p1',
      'a b',
      '__proto__',
      'line',
      'text',
      'mm',
      '#C0FFEE',
      '#c0ffee',
      'x'.repeat(65),
      'x'.repeat(1001),
      [],
      [0],
      ['p1'],
      ['p1', 'p2'],
      {},
      { x: 1 },
      { x: 1, y: 2 },
      { pin: 'p1' },
      { pin: 'p1', x: 1, y: 2 },
      { kind: 'line' },
      { from: 'none' },
      { from: 'file' },
    );
    const counts = { taken: 0, refused: 0 };
    fc.assert(
      fc.property(
        arbitraryPattern(),
        fc.nat(),
        odd,
        fc.constantFrom('replace', 'drop', 'add'),
        (pattern, at, value, how) => {
          const file = JSON.parse(writePattern(pattern));
          const places = placesIn(file);
          const [holder, key] = places[at % places.length]!;
          // Other versions are refused by their number before any shape is looked at.
          fc.pre(!(holder === file && (key === 'version' || key === 'format')));
          alter(holder, key, how, value);
          const text = JSON.stringify(file);
          const taken = readerTakes(text);
          counts[taken ? 'taken' : 'refused']++;
          expect([text, validate(JSON.parse(text))]).toEqual([text, taken]);
        },
      ),
      { seed: 88, numRuns: 1500 },
    );
    expect(counts.taken).toBeGreaterThan(100);
    expect(counts.refused).toBeGreaterThan(500);
  });

  test.each<[string, boolean]>([
    ['{"pins":[{"x":12.5,"y":30}]}', true],
    ['{"unit":"mm","pins":[{"x":12.5,"y":30}]}', true],
    ['{"pins":[]}', true],
    ['{}', false],
    ['{"pins":[{"x":1}]}', false],
    ['{"pins":[],"format":"recipe"}', false],
    ['{"pins":[],"version":3}', false],
    ['{"pins":[],"__proto__":1}', false],
    ['[]', false],
    ['null', false],
    ['7', false],
  ])('%s', (text, taken) => {
    expect(validate(JSON.parse(text))).toBe(taken);
    expect(readerTakes(text)).toBe(taken);
  });
});

type Holder = Record<string, unknown>;

function alter(holder: Holder, key: string, how: 'replace' | 'drop' | 'add', value: unknown): void {
  if (how === 'replace') holder[key] = value;
  else if (how === 'add') {
    if (Array.isArray(holder)) holder.push(value);
    else holder[`${key}x`] = value;
  } else if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
}

/** Every place in a file: what holds it, and under which key. */
function placesIn(value: unknown): [Holder, string][] {
  if (typeof value !== 'object' || value === null) return [];
  const holder = value as Holder;
  return Object.keys(holder).flatMap((key) => [[holder, key] as [Holder, string], ...placesIn(holder[key])]);
}
