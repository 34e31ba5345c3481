import type { Pattern } from '../pattern.ts';

/**
 * The pattern as a file carries it: lengths and confidences to 0.001, dots an inch to 0.000001, the four factors of
 * the paper's map to 0.000000001 (its pixels are many, and each may err by no more than a file's length may).
 * Rounding twice is the same as rounding once. A recipe keeps all digits of its figures: a pattern is remade from them.
 */
export const roundPattern = ({ recipe, ...pattern }: Pattern): Pattern => ({
  ...(roundNumbers(pattern) as Pattern),
  ...(recipe && { recipe }),
});

const FINER: ReadonlyMap<string, number> = new Map([
  ['dpi', 1e6],
  ['a', 1e9],
  ['b', 1e9],
  ['c', 1e9],
  ['d', 1e9],
]);

/** Every number in a pattern, or in a part of one, as a file carries it. */
export const roundNumbers = <Part extends object>(part: Part): Part => rounded(part, 1e3) as Part;

function rounded(value: unknown, perUnit: number): unknown {
  // Adding 0 turns -0 into 0, which JSON cannot tell apart.
  if (typeof value === 'number') return Math.round(value * perUnit) / perUnit + 0;
  if (Array.isArray(value)) return value.map((item) => rounded(item, perUnit));
  if (typeof value !== 'object' || value === null) return value;
  const result: Record<string, unknown> = {};
  for (const key of Object.keys(value)) {
    result[key] = rounded((value as Record<string, unknown>)[key], FINER.get(key) ?? 1e3);
  }
  return result;
}
