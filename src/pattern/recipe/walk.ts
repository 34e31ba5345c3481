import type { z } from 'zod';
import { millimetres } from './figures.ts';
import { type Recipe, recipeSchema } from './recipe.ts';

/** What a figure of a recipe can be; lengths in mm. */
export type Takes =
  | { readonly kind: 'length' | 'number' | 'count'; readonly least: number; readonly most: number }
  | { readonly kind: 'word'; readonly words: readonly string[] }
  | { readonly kind: 'yes-or-no' }
  | { readonly kind: 'text' };

/** One figure of a recipe, by its path: 'spacing', 'headside.pins', 'areas.0.width'. */
export interface Figure {
  readonly path: string;
  readonly value: string | number | boolean;
  readonly takes: Takes;
  /** What it means, in words; null where its name says it all. */
  readonly means: string | null;
}

/** Every figure of a recipe, in the order of its schema. */
export function figuresOf(recipe: Recipe): Figure[] {
  const figures: Figure[] = [];
  mapFigures(recipe, (figure) => {
    figures.push(figure);
    return figure.value;
  });
  return figures;
}

/** A recipe's value with each of its figures replaced; it may no longer be one that the schema takes. */
export const mapFigures = (recipe: Recipe, replace: (figure: Figure) => Figure['value']): unknown =>
  mapped(recipeSchema, recipe, '', replace);

function mapped(
  schema: z.core.$ZodType,
  value: unknown,
  path: string,
  replace: (figure: Figure) => Figure['value'],
): unknown {
  if (typeof value === 'object' && value !== null) {
    const parts = Object.entries(value).map(([key, part]) => {
      const own = partSchema(schema, value, key);
      return [key, own ? mapped(own, part, path === '' ? key : `${path}.${key}`, replace) : part] as const;
    });
    return Array.isArray(value) ? parts.map(([, part]) => part) : Object.fromEntries(parts);
  }
  if (typeof value !== 'string' && typeof value !== 'number' && typeof value !== 'boolean') return value;
  return replace({ path, value, takes: takesOf(leafFor(schema, value)), means: meaningOf(schema) });
}

/** The schema of one part of a value; undefined where there can be no such part. */
export function partSchema(
  schema: z.core.$ZodType,
  value: unknown,
  key: string,
): z.core.$ZodType | undefined {
  const { def } = (bare(schema) as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object':
      return Object.hasOwn(def.shape, key) ? def.shape[key] : undefined;
    case 'array':
      return /^\d{1,6}$/.test(key) ? def.element : undefined;
    case 'tuple':
      return /^\d{1,6}$/.test(key) ? (def.items[Number(key)] ?? def.rest ?? undefined) : undefined;
    case 'union': {
      const options = def.options.filter((option) => partSchema(option, value, key) !== undefined);
      const own = options.find((option) => isKindOf(option, value)) ?? options[0];
      return own && partSchema(own, value, key);
    }
    default:
      return undefined;
  }
}

/** The words that say which kind a value is, where any of several will do: the `kind` of a headside, for example. */
export function kindWords(schema: z.core.$ZodType, key: string): readonly string[] | null {
  const { def } = (bare(schema) as z.core.$ZodTypes)._zod;
  if (def.type !== 'union' || !('discriminator' in def) || def.discriminator !== key) return null;
  return def.options.flatMap((option) => {
    const part = partSchema(option, undefined, key);
    const own = part && (bare(part) as z.core.$ZodTypes)._zod.def;
    return own?.type === 'literal' ? own.values.map(String) : [];
  });
}

/** The word by which the kinds of a part are told apart, such as `kind` or `shape`; null where it has one kind only. */
export function kindKey(schema: z.core.$ZodType): string | null {
  const { def } = (bare(schema) as z.core.$ZodTypes)._zod;
  return def.type === 'union' && 'discriminator' in def ? String(def.discriminator) : null;
}

/** The schemas of all parts that a value has or may have, by their names; null where it is no record. */
export function shapeOf(
  schema: z.core.$ZodType,
  value: unknown,
): Readonly<Record<string, z.core.$ZodType>> | null {
  const { def } = (bare(schema) as z.core.$ZodTypes)._zod;
  if (def.type === 'object') return def.shape;
  if (def.type !== 'union') return null;
  const own = def.options.find((option) => isKindOf(option, value) && shapeTakes(option, value));
  return own ? shapeOf(own, value) : null;
}

const shapeTakes = (schema: z.core.$ZodType, value: unknown): boolean =>
  Object.keys(Object(value)).every((key) => partSchema(schema, value, key) !== undefined);

/** The schema of the things in a list; null where it is no list. */
export function elementOf(schema: z.core.$ZodType): z.core.$ZodType | null {
  const { def } = (bare(schema) as z.core.$ZodTypes)._zod;
  return def.type === 'array' ? def.element : null;
}

/** What a figure takes, from its schema. */
export function takesOf(schema: z.core.$ZodType): Takes {
  const leaf = bare(schema);
  const { def } = (leaf as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'number': {
      const { minValue, maxValue, isInt } = leaf as z.ZodNumber;
      const range = {
        least: minValue ?? Number.NEGATIVE_INFINITY,
        most: maxValue ?? Number.POSITIVE_INFINITY,
      };
      if (isInt) return { kind: 'count', ...range };
      return { kind: millimetres.get(leaf) ? 'length' : 'number', ...range };
    }
    case 'enum':
      return { kind: 'word', words: Object.values(def.entries).map(String) };
    case 'literal':
      return { kind: 'word', words: def.values.map(String) };
    case 'boolean':
      return { kind: 'yes-or-no' };
    default:
      return { kind: 'text' };
  }
}

export const meaningOf = (schema: z.core.$ZodType): string | null => {
  const own = (schema as z.ZodType).description;
  if (own) return own;
  const inner = innerOf(schema);
  return inner ? meaningOf(inner) : null;
};

/** Whether a figure may be left out altogether. */
export function isOptional(schema: z.core.$ZodType): boolean {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  const inner = innerOf(schema);
  return def.type === 'optional' || def.type === 'default' || (inner !== null && isOptional(inner));
}

/** Whether leaving a part out means something of its own, and not merely the usual figure. */
export function canBeAbsent(schema: z.core.$ZodType): boolean {
  const inner = innerOf(schema);
  return (schema as z.core.$ZodTypes)._zod.def.type === 'optional' || (inner !== null && canBeAbsent(inner));
}

/** Every schema that a figure's value may fit. */
export function leavesOf(schema: z.core.$ZodType): readonly z.core.$ZodType[] {
  const leaf = bare(schema);
  const { def } = (leaf as z.core.$ZodTypes)._zod;
  return def.type === 'union' ? def.options.flatMap(leavesOf) : [leaf];
}

const leafFor = (schema: z.core.$ZodType, value: unknown): z.core.$ZodType =>
  leavesOf(schema).find((leaf) => (leaf as z.ZodType).safeParse(value).success) ?? schema;

function isKindOf(schema: z.core.$ZodType, value: unknown): boolean {
  const { def } = (bare(schema) as z.core.$ZodTypes)._zod;
  if (def.type !== 'object' || typeof value !== 'object' || value === null) return false;
  return Object.entries(def.shape).every(([key, part]) => {
    const own = (bare(part) as z.core.$ZodTypes)._zod.def;
    return own.type !== 'literal' || own.values.includes((value as Record<string, string>)[key] ?? '');
  });
}

function bare(schema: z.core.$ZodType): z.core.$ZodType {
  const inner = innerOf(schema);
  return inner ? bare(inner) : schema;
}

function innerOf(schema: z.core.$ZodType): z.core.$ZodType | null {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'optional':
    case 'default':
    case 'prefault':
    case 'nullable':
    case 'readonly':
      return def.innerType;
    default:
      return null;
  }
}
