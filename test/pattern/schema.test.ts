import { expect, test } from 'vitest';
import type { z } from 'zod';
import { fileSchema } from '#pattern/file/schema.ts';
import type { Pattern } from '#pattern/pattern.ts';

type DeepReadonly<Value> = Value extends readonly (infer Item)[]
  ? readonly DeepReadonly<Item>[]
  : Value extends object
    ? { readonly [Key in keyof Value]: DeepReadonly<Value[Key]> }
    : Value;

/** Compiles only while every pattern that the types allow is one that the schema allows. */
const asFile = (pattern: Pattern): DeepReadonly<z.input<typeof fileSchema>> => pattern;

test('the types and the schema know the same fields', () => {
  const pattern: Required<Pattern> = {
    unit: 'mm',
    about: {},
    pins: [],
    runs: [],
    marks: [],
    areas: [],
    repeat: { step: { x: 1, y: 0 } },
    sizes: {},
    sheet: { width: 1, height: 1 },
    scale: { from: 'none' },
    paper: {
      entry: 'paper.png',
      sha256: '0'.repeat(64),
      width: 1,
      height: 1,
      toPattern: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 },
      stood: {},
    },
    recipe: { kind: 'strip', spacing: 5, angle: 45, repeats: 4, length: 6, width: 9, ground: 'plain' },
  };
  const fields = Object.keys(fileSchema.shape).filter((key) => key !== 'format' && key !== 'version');
  expect(fields.sort()).toEqual(Object.keys(asFile(pattern)).sort());
});
