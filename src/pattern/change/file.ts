import { z } from 'zod';
import { done, failed, type Result } from '#base/result.ts';
import { MAX_DEPTH, MAX_PINS, MAX_TEXT_LENGTH, MAX_VALUES } from '../file/limits.ts';
import {
  aboutSchema,
  areaSchema,
  markSchema,
  pinSchema,
  repeatSchema,
  runSchema,
  scaleSchema,
  sheetSchema,
  sizesSchema,
  unitSchema,
} from '../file/schema.ts';
import { parsePaper, parsePart } from '../file/shape.ts';
import { newerVersion } from '../file/upgrades.ts';
import { parseJson } from '../json/parse.ts';
import { recipeSchema } from '../recipe/recipe.ts';
import type { PatternTrouble } from '../trouble.ts';
import { type Change, LISTS, PARTS, type PartName } from './change.ts';

/** Says of a JSON file that it holds a change of ours. */
export const CHANGE_FORMAT = 'pinlight-change';
export const CHANGE_VERSION = 1;

/** The text of a change. Numbers are not rounded: replayed from its text, a change does exactly what it did. */
export const writeChange = (change: Change): string => `${JSON.stringify(changeForFile(change))}\n`;

/** A change as a file carries it, with what says that it is one. */
export const changeForFile = (change: Change): object => ({
  format: CHANGE_FORMAT,
  version: CHANGE_VERSION,
  ...change,
});

/**
 * A change from its text, or the first thing that stops it. Whether it fits a pattern, and leaves a whole one behind,
 * is another question: see `misfit` and `findBrokenReference`.
 */
export function readChange(text: string): Result<Change, PatternTrouble> {
  const parsed = parseJson(text, { length: MAX_TEXT_LENGTH, values: MAX_VALUES, depth: MAX_DEPTH });
  return parsed.ok ? changeOfFile(parsed.value) : parsed;
}

/** The same for a value that was parsed as part of another file. */
export function changeOfFile(file: unknown): Result<Change, PatternTrouble> {
  const newer = newerVersion(file, CHANGE_VERSION);
  if (newer !== null) return failed({ kind: 'newer-version', version: newer, newest: CHANGE_VERSION });
  const shell = parsePart(shellSchema, file, []);
  if (!shell.ok) return shell;
  const result: Record<string, unknown> = {};
  for (const list of LISTS) {
    const edit = shell.value[list];
    if (!edit) continue;
    const checked: Record<string, unknown[]> = {};
    for (const key of ['added', 'updated', 'removed'] as const) {
      const schema = key === 'updated' ? z.tuple([records[list], records[list]]) : placed(records[list]);
      const items: unknown[] = [];
      for (const [i, item] of edit[key].entries()) {
        const one = parsePart<unknown>(schema, item, [list, key, i]);
        if (!one.ok) return one;
        items.push(one.value);
      }
      checked[key] = items;
    }
    result[list] = checked;
  }
  for (const part of PARTS) {
    const pair = shell.value[part];
    if (!pair) continue;
    const values: unknown[] = [];
    for (const [i, value] of pair.entries()) {
      const isPicture = part === 'paper' && value !== null;
      const one = isPicture
        ? parsePaper(value, [part, i])
        : parsePart<unknown>(parts[part], value, [part, i]);
      if (!one.ok) return one;
      values.push(one.value);
    }
    result[part] = values;
  }
  return done(result as Change);
}

const parts: Readonly<Record<PartName, z.ZodType>> = {
  unit: unitSchema,
  about: aboutSchema,
  repeat: repeatSchema.nullable(),
  sizes: sizesSchema,
  sheet: sheetSchema.nullable(),
  scale: scaleSchema,
  paper: z.null(),
  recipe: recipeSchema.nullable(),
};

/** A record of a change always bears its id. */
const identified = (schema: z.ZodType<{ id?: string }>): z.ZodType =>
  schema.refine(({ id }) => id !== undefined, { path: ['id'] });

const records: Readonly<Record<(typeof LISTS)[number], z.ZodType>> = {
  pins: identified(pinSchema),
  runs: identified(runSchema),
  marks: identified(markSchema),
  areas: identified(areaSchema),
};

const placed = (record: z.ZodType): z.ZodType =>
  z.strictObject({ index: z.int().min(0).max(MAX_PINS), record });

// What is in the lists is checked one by one, as in a pattern file.
const items = z.array(z.unknown()).max(MAX_PINS);
const listEdit = z.strictObject({ added: items, updated: items, removed: items }).exactOptional();
const pair = z.tuple([z.unknown(), z.unknown()]).exactOptional();

const shellSchema = z.strictObject({
  format: z.literal(CHANGE_FORMAT),
  version: z.literal(CHANGE_VERSION),
  pins: listEdit,
  runs: listEdit,
  marks: listEdit,
  areas: listEdit,
  unit: pair,
  about: pair,
  repeat: pair,
  sizes: pair,
  sheet: pair,
  scale: pair,
  paper: pair,
  recipe: pair,
});
