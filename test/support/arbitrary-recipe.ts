import fc from 'fast-check';
import type { z } from 'zod';
import type { Recipe } from '#pattern/recipe/recipe.ts';

/**
 * Any recipe that a schema takes, made from the schema itself. Counts and lengths are mostly small, so that most
 * patterns are; now and then a figure is the least or the most that it can be.
 */
export const arbitraryRecipe = (schema: z.core.$ZodType): fc.Arbitrary<Recipe> =>
  arbitraryOf(schema) as fc.Arbitrary<Recipe>;

function arbitraryOf(schema: z.core.$ZodType): fc.Arbitrary<unknown> {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'object': {
      const parts = Object.entries(def.shape).map(([key, part]) => [key, arbitraryOf(part)] as const);
      const optional = new Set(Object.keys(def.shape).filter((key) => isOptional(def.shape[key]!)));
      return fc.record(Object.fromEntries(parts), {
        requiredKeys: Object.keys(def.shape).filter((key) => !optional.has(key)),
      });
    }
    case 'array': {
      const least = leastLength(def.checks ?? []);
      return fc.array(arbitraryOf(def.element), { minLength: least, maxLength: Math.max(3, least) });
    }
    case 'tuple':
      return fc.tuple(...def.items.map(arbitraryOf));
    case 'union':
      return fc.oneof(...def.options.map(arbitraryOf));
    case 'optional':
    case 'default':
    case 'prefault':
      return arbitraryOf(def.innerType);
    case 'literal':
      return fc.constantFrom(...def.values);
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries));
    case 'boolean':
      return fc.boolean();
    case 'number': {
      const { minValue, maxValue, isInt } = schema as z.ZodNumber;
      const [min, max] = [minValue ?? -100, maxValue ?? 100];
      return isInt ? wholeBetween(min, max) : numberBetween(min, max);
    }
    case 'string':
      return fc.constant('#c0ffee');
    default:
      throw new RangeError(`arbitraryRecipe: a figure of the kind ${def.type}`);
  }
}

const leastLength = (checks: readonly z.core.$ZodCheck[]): number =>
  Math.max(
    0,
    ...checks.map(({ _zod: { def } }) =>
      def.check === 'min_length' ? (def as z.core.$ZodCheckMinLengthDef).minimum : 0,
    ),
  );

const wholeBetween = (min: number, max: number): fc.Arbitrary<number> => {
  const few = fc.integer({ min, max: Math.min(max, Math.max(min, 0) + (min > 5 ? 120 : 24)) });
  return fc.oneof({ weight: 30, arbitrary: few }, { weight: 1, arbitrary: fc.constantFrom(min, max) });
};

const numberBetween = (min: number, max: number): fc.Arbitrary<number> => {
  const most = max > 1000 ? 12 : max;
  const usual = fc.double({ min: max > 1000 ? Math.max(min, -12) : min, max: most, noNaN: true });
  return fc.oneof({ weight: 30, arbitrary: usual }, { weight: 1, arbitrary: fc.constantFrom(min, max) });
};

const isOptional = (schema: z.core.$ZodType): boolean =>
  ['optional', 'default', 'prefault'].includes((schema as z.core.$ZodTypes)._zod.def.type);
