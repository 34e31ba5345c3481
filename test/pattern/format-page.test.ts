import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CONTAINER_ENDING } from '#pattern/container/container.ts';
import { MAX_ENTRIES } from '#pattern/container/manifest.ts';
import { MAX_ENTRY_BYTES, MAX_TOTAL_BYTES } from '#pattern/container/zip.ts';
import * as limits from '#pattern/file/limits.ts';
import { readPattern } from '#pattern/file/read.ts';
import { fileSchema } from '#pattern/file/schema.ts';
import { writePattern } from '#pattern/file/write.ts';

const page = readFileSync(new URL('../../docs/pattern-format.md', import.meta.url), 'utf8');
const examples = [
  ...[...page.matchAll(/^ {4}(\{"\w+":.*\})$/gm)].map((match) => match[1]!),
  ...[...page.matchAll(/```json\n(.*?)```/gs)].map((match) => match[1]!),
];

test('every example on the page opens', () => {
  expect(examples.length).toBe(3);
  for (const example of examples) expect(readPattern(example)).toMatchObject({ ok: true });
});

test('the whole example leaves out no list or part but the picture, and no kind of mark', () => {
  const file = JSON.parse(examples[2]!);
  const missing = Object.keys(fileSchema.shape).filter((key) => !(key in file));
  expect(missing).toEqual(['paper']);
  const kinds = file.marks.map((mark: { kind: string }) => mark.kind);
  expect(kinds).toEqual(['line', 'gimp', 'plait', 'picot', 'arrow', 'number', 'text']);
});

test('what is said of opening and saving again holds', () => {
  const read = readPattern(examples[2]!);
  if (!read.ok) throw new Error('refused');
  const text = writePattern(read.value);
  const again = readPattern(text);
  expect(again.ok && writePattern(again.value)).toBe(text);
});

test('every field of the schema is on the page', () => {
  const published = readFileSync(new URL('../../docs/schema/pattern.schema.json', import.meta.url), 'utf8');
  // The figures of recipes are described in their own schema.
  const schema = JSON.stringify(
    JSON.parse(published, (key, part) => (key === 'recipe' ? {} : part)),
    null,
    1,
  );
  const names = new Set([...schema.matchAll(/"([A-Za-z0-9]+)": \{/g)].map((match) => match[1]!));
  for (const word of ['properties', 'items', 'additionalProperties', 'propertyNames', 'default', 'toPattern'])
    names.delete(word);
  for (const letter of 'abcdef') names.delete(letter);
  expect([...names].filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
});

test('the limits on the page are those of the program', () => {
  const grouped = (value: number) => String(value).replace(/\B(?=(\d{3})+$)/g, ',');
  for (const sentence of [
    `more than ${grouped(limits.MAX_TEXT_LENGTH)} characters, of more than ${grouped(limits.MAX_VALUES)} values`,
    `brackets more than ${limits.MAX_DEPTH} deep`,
    `More than ${grouped(limits.MAX_PINS)} pins or marks, ${grouped(limits.MAX_RUNS)} runs or areas, or ${grouped(limits.MAX_PATH)} pins or anchors`,
    `from -${grouped(limits.MAX_COORDINATE)} to ${grouped(limits.MAX_COORDINATE)}`,
    `up to ${limits.MAX_ID_LENGTH} letters`,
    `at most ${grouped(limits.MAX_LINE_LENGTH)} characters (\`notes\`: ${grouped(limits.MAX_NOTES_LENGTH)})`,
    `an entry of more than ${MAX_ENTRY_BYTES / 2 ** 20} MB or ${MAX_TOTAL_BYTES / 2 ** 20} MB together`,
    `ends in \`${CONTAINER_ENDING}\``,
  ]) {
    expect(page.replaceAll('\n', ' ').replaceAll('  ', ' ')).toContain(sentence);
  }
  expect(page.replace(/\s+/g, ' ')).toContain(`more than ${MAX_ENTRIES} entries`);
  expect([limits.MAX_MARKS, limits.MAX_AREAS]).toEqual([limits.MAX_PINS, limits.MAX_RUNS]);
});
