import type { z } from 'zod';
import { type Recipe, recipeSchema } from '#pattern/recipe/recipe.ts';
import {
  canBeAbsent,
  elementOf,
  isOptional,
  kindKey,
  kindWords,
  leavesOf,
  meaningOf,
  partSchema,
  shapeOf,
  type Takes,
  takesOf,
} from '#pattern/recipe/walk.ts';
import { usualFigure } from './usual.ts';

/** A part of a recipe that may be of several kinds, or may be left out and put in. */
export interface Part {
  readonly path: string;
  /** The words for its kinds; none where it is a single figure. */
  readonly kinds: readonly string[];
  /** Its kind or figure as it is; null where it is left out. */
  readonly now: string | null;
  readonly canBeLeftOut: boolean;
  /** What a single figure takes; null where it has kinds. */
  readonly takes: Takes | null;
  readonly means: string | null;
}

/** Every part of a recipe that can be of another kind, left out or put in; one more of each list stands at its end. */
export function partsOf(recipe: Recipe): Part[] {
  const parts: Part[] = [];
  gatherWithin(recipeSchema, recipe, '', parts);
  return parts;
}

function gatherWithin(schema: z.core.$ZodType, value: object, path: string, parts: Part[]): void {
  for (const [name, part] of Object.entries(shapeOf(schema, value) ?? {})) {
    const below = path === '' ? name : `${path}.${name}`;
    const element = elementOf(part);
    if (!element) {
      gather(part, valueAt(value, name), below, canBeAbsent(part), parts);
      continue;
    }
    const list = (valueAt(value, name) ?? []) as readonly unknown[];
    for (const [at, item] of list.entries()) gather(element, item, `${below}.${at}`, true, parts);
    if (kindKey(element)) gather(element, undefined, `${below}.${list.length}`, true, parts);
  }
}

function gather(
  schema: z.core.$ZodType,
  value: unknown,
  path: string,
  canBeLeftOut: boolean,
  parts: Part[],
): void {
  const key = kindKey(schema);
  const means = meaningOf(schema);
  if (key) {
    const now = value === undefined ? null : String(valueAt(value, key));
    parts.push({ path, kinds: kindWords(schema, key) ?? [], now, canBeLeftOut, takes: null, means });
  } else if (canBeLeftOut && typeof value !== 'object') {
    const takes = takesOf(leavesOf(schema)[0]!);
    parts.push({
      path,
      kinds: [],
      now: value === undefined ? null : String(value),
      canBeLeftOut,
      takes,
      means,
    });
  }
  if (typeof value === 'object' && value !== null) gatherWithin(schema, value, path, parts);
}

/** A recipe with a part made one of its kinds or, for null, left out; null where that is no recipe. */
export const withPart = (recipe: Recipe, path: string, kind: string | null): Recipe | null =>
  changed(recipe, path, (schema, old) => (kind === null ? undefined : ofKind(schema, old, kind, recipe)));

/** A recipe with a single figure put in that was left out; null where that is no recipe. */
export const withUsual = (recipe: Recipe, path: string): Recipe | null =>
  changed(recipe, path, (_schema, _old, name) => usualFigure(name, recipe));

function changed(recipe: Recipe, path: string, replace: Replace): Recipe | null {
  const changed = changedAt(recipeSchema, recipe, path.split('.'), replace);
  const shaped = recipeSchema.safeParse(changed);
  return shaped.success ? shaped.data : null;
}

type Replace = (schema: z.core.$ZodType, old: unknown, name: string) => unknown;

function changedAt(
  schema: z.core.$ZodType,
  value: unknown,
  [key, ...rest]: readonly string[],
  replace: Replace,
): unknown {
  const part = key === undefined ? undefined : partSchema(schema, value, key);
  if (key === undefined || part === undefined) return value;
  const old = valueAt(value, key);
  const next = rest.length > 0 ? changedAt(part, old, rest, replace) : replace(part, old, key);
  if (Array.isArray(value) || (value === undefined && /^\d+$/.test(key))) {
    const list = (value ?? []) as readonly unknown[];
    return next === undefined ? list.toSpliced(Number(key), 1) : list.toSpliced(Number(key), 1, next);
  }
  const { [key]: _, ...others } = Object(value) as Record<string, unknown>;
  return next === undefined ? others : { ...(value as object), [key]: next };
}

/** A part of that kind: what it has in common with the one before stays, the rest begins with usual figures. */
function ofKind(schema: z.core.$ZodType, old: unknown, word: string, recipe: Recipe): unknown {
  const key = kindKey(schema);
  if (!key) return undefined;
  const parts = Object.entries(shapeOf(schema, { [key]: word }) ?? {}).map(([name, part]) => {
    if (name === key) return [name, word] as const;
    const before = valueAt(old, name);
    if (before !== undefined && (part as z.ZodType).safeParse(before).success) return [name, before] as const;
    return [name, isOptional(part) ? undefined : usualFigure(name, recipe)] as const;
  });
  return Object.fromEntries(parts.filter(([, part]) => part !== undefined));
}

const valueAt = (value: unknown, key: string): unknown =>
  Object.hasOwn(Object(value), key) ? (value as Record<string, unknown>)[key] : undefined;
