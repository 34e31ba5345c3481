import type { z } from 'zod';
import { done, failed, type Result } from '#base/result.ts';
import { parseLength } from '#base/units/parse-length.ts';
import { parsePart } from '#pattern/file/shape.ts';
import { type Recipe, recipeSchema } from '#pattern/recipe/recipe.ts';
import {
  figuresOf,
  isOptional,
  kindWords,
  leavesOf,
  meaningOf,
  partSchema,
  type Takes,
  takesOf,
} from '#pattern/recipe/walk.ts';
import type { Path, PatternTrouble } from '#pattern/trouble.ts';
import type { FigureTrouble } from '../trouble.ts';

/** A figure as a person sets it: its path in the recipe, and what it becomes, as typed. */
export interface FigureSet {
  readonly path: string;
  readonly text: string;
}

/** A recipe with some of its figures changed, one after the other. What is not set stays as it is. */
export function withFigures(
  recipe: Recipe,
  sets: readonly FigureSet[],
): Result<Recipe, FigureTrouble | PatternTrouble> {
  if (sets.length === 0) return done(recipe);
  let changed: unknown = recipe;
  for (const set of sets) {
    const next = withFigure(recipeSchema, changed, set.path.split('.'), set);
    if (next === null) {
      return failed({
        kind: 'unknown-figure',
        figure: set.path,
        figures: figuresOf(recipe).map(({ path }) => path),
      });
    }
    if (!next.ok) return next;
    changed = next.value;
  }
  const shaped = parsePart(recipeSchema, changed, []);
  if (shaped.ok || shaped.trouble.kind !== 'wrong-shape') return shaped;
  const { path, reason } = shaped.trouble;
  if (reason.kind !== 'missing') return failed({ ...shaped.trouble, path: ['recipe', ...path] });
  return failed({ kind: 'missing-figure', figure: path.join('.'), means: meaningAt(changed, path) });
}

function meaningAt(value: unknown, path: Path): string | null {
  let schema: z.core.$ZodType | undefined = recipeSchema;
  let at = value;
  for (const key of path) {
    schema = schema && partSchema(schema, at, String(key));
    at = Object(at)[key];
  }
  return schema ? meaningOf(schema) : null;
}

/** The value with the part at the end of a path set; null where the path leads nowhere. */
function withFigure(
  schema: z.core.$ZodType,
  value: unknown,
  [key, ...rest]: readonly string[],
  set: FigureSet,
): Result<unknown, FigureTrouble> | null {
  const part = key === undefined ? undefined : partSchema(schema, value, key);
  if (key === undefined || part === undefined) return null;
  const old = Object.hasOwn(Object(value), key) ? (value as Record<string, unknown>)[key] : undefined;
  const kinds = kindWords(schema, key);
  const next =
    rest.length > 0
      ? withFigure(part, old, rest, set)
      : kinds
        ? wordOf(kinds, set, meaningOf(part))
        : figureFrom(part, set);
  if (next === null || !next.ok) return next;
  return Array.isArray(value) || (value === undefined && /^\d+$/.test(key))
    ? listWith(value, Number(key), next.value)
    : done(objectWith(value, key, next.value));
}

function listWith(value: unknown, at: number, item: unknown): Result<unknown, FigureTrouble> | null {
  const list = (value ?? []) as readonly unknown[];
  if (at > list.length) return null;
  return done(item === undefined ? list.toSpliced(at, 1) : list.toSpliced(at, 1, item));
}

function objectWith(value: unknown, key: string, item: unknown): object {
  const { [key]: _, ...others } = (value ?? {}) as Record<string, unknown>;
  if (item === undefined) return others;
  // A key keeps its place, so that a recipe's file changes in one line only.
  return { ...(value as object), [key]: item };
}

/** A figure from what was typed; undefined where it is to be left out. */
function figureFrom(
  schema: z.core.$ZodType,
  { path, text }: FigureSet,
): Result<unknown, FigureTrouble> | null {
  const typed = text.trim();
  const leaves = leavesOf(schema);
  for (const leaf of leaves) {
    const value = typedValue(takesOf(leaf), typed);
    if (value !== null && (leaf as z.ZodType).safeParse(value).success) return done(value);
  }
  if (typed === 'none' && isOptional(schema)) return done(undefined);
  const figures = leaves.filter((leaf) => !HOLDERS.has((leaf as z.ZodType).type));
  if (figures.length === 0) return null;
  return failed({
    kind: 'bad-figure',
    figure: path,
    given: text,
    takes: takesOf(figures[0]!),
    means: meaningOf(schema),
  });
}

/** What holds figures and is none itself. */
const HOLDERS: ReadonlySet<string> = new Set(['object', 'array', 'tuple', 'record']);

function wordOf(
  words: readonly string[],
  { path, text }: FigureSet,
  means: string | null,
): Result<unknown, FigureTrouble> {
  if (words.includes(text.trim())) return done(text.trim());
  return failed({ kind: 'bad-figure', figure: path, given: text, takes: { kind: 'word', words }, means });
}

/** What was typed as the value that a figure takes; null where it is none. Ranges are the schema's business. */
function typedValue(takes: Takes, typed: string): string | number | boolean | null {
  switch (takes.kind) {
    case 'length': {
      const length = parseLength(typed);
      return length.ok ? length.value : null;
    }
    case 'count':
      return /^-?\d{1,9}$/.test(typed) ? Number(typed) : null;
    case 'number': {
      const [, number, unit] = /^(-?\d{1,9}(?:[.,]\d{1,15})?)\s*(°|deg|degrees|%)?$/.exec(typed) ?? [];
      if (number === undefined) return null;
      const value = Number(number.replace(',', '.'));
      return unit === '%' ? value / 100 : value;
    }
    case 'yes-or-no':
      return /^(yes|true)$/i.test(typed) ? true : /^(no|false)$/i.test(typed) ? false : null;
    case 'word':
    case 'text':
      return typed;
  }
}
