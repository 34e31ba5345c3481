import { readFileSync, writeFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { library } from '#craft/draft/library/index.ts';
import { readRecipe, recipeJsonSchema, writeRecipe } from '#pattern/recipe-file/file.ts';

const published = new URL('../../../docs/schema/recipe.schema.json', import.meta.url);
const schemaText = `${JSON.stringify(recipeJsonSchema(), null, 2)}\n`;

test('the published schema is the present one (UPDATE_SCHEMA=1 writes it anew)', () => {
  if (process.env.UPDATE_SCHEMA) writeFileSync(published, schemaText);
  expect(readFileSync(published, 'utf8')).toBe(schemaText);
});

const validate = new Ajv2020({ strict: true, strictTuples: false }).compile(JSON.parse(schemaText));
const strip = { kind: 'strip', spacing: 4, angle: 45, repeats: 2, length: 3, width: 6 };
const file = { format: 'pinlight-recipe', version: 1, recipe: strip };

describe('a recipe file', () => {
  test.each(library)('$name: written, read and judged by Ajv, it is the same', ({ about, recipe }) => {
    const text = writeRecipe({ about, recipe });
    expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
    const read = readRecipe(text);
    if (!read.ok) throw new Error(JSON.stringify(read.trouble));
    expect(writeRecipe(read.value)).toBe(text);
  });

  test('figures that are left out are filled in', () => {
    const read = readRecipe(JSON.stringify(file));
    expect(read).toMatchObject({ ok: true, value: { about: {}, recipe: { ...strip, ground: 'plain' } } });
  });

  test.each<[string, unknown, object]>([
    ['another format', { ...file, format: 'pinlight-pattern' }, { kind: 'wrong-shape', path: ['format'] }],
    ['no version', { format: 'pinlight-recipe', recipe: strip }, { kind: 'wrong-shape', path: ['version'] }],
    ['a newer version', { ...file, version: 4 }, { kind: 'newer-version', version: 4, newest: 1 }],
    ['a word that is not known', { ...file, recipe: { ...strip, colour: 'red' } }, { kind: 'wrong-shape' }],
    ['a kind that is not known', { ...file, recipe: { ...strip, kind: 'hat' } }, { kind: 'wrong-shape' }],
    [
      'an angle too steep',
      { ...file, recipe: { ...strip, angle: 80 } },
      { kind: 'wrong-shape', path: ['recipe', 'angle'], reason: { kind: 'too-big', maximum: 75 } },
    ],
    ['a list', [file], { kind: 'wrong-shape' }],
    ['an endless number', '{"format":"pinlight-recipe","version":1e999}', { kind: 'not-finite' }],
    ['too long a text', ' '.repeat(1_000_001), { kind: 'too-large', what: 'text' }],
    ['brackets too deep', '['.repeat(40), { kind: 'too-large', what: 'depth' }],
  ])('%s is refused', (_name, value, trouble) => {
    const text = typeof value === 'string' ? value : JSON.stringify(value);
    expect(readRecipe(text)).toMatchObject({ ok: false, trouble });
  });
});
