import type { z } from 'zod';
import type { Path, PatternTrouble, ShapeReason } from '../trouble.ts';

/** What a fault found by the schema library says, as a trouble of ours. `value` is what was checked, at `outer`. */
export function troubleOfIssue(issue: z.core.$ZodIssue, value: unknown, outer: Path): PatternTrouble {
  const inner = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
  const path = [...outer, ...inner];
  const found = valueAt(value, inner);
  if (found === Infinity || found === -Infinity) return { kind: 'not-finite', path };
  if (issue.code === 'invalid_union') {
    // A place given by an object that is neither kind of anchor: tell of a number that no computer can hold.
    const infinite = issue.errors.flat().find((part) => isInfinite(valueAt(found, part.path)));
    if (infinite) return { kind: 'not-finite', path: [...path, ...(infinite.path as Path)] };
  }
  if (issue.code === 'too_big' && issue.origin === 'array' && Array.isArray(found)) {
    return { kind: 'too-many', path, count: found.length, limit: Number(issue.maximum) };
  }
  return { kind: 'wrong-shape', path, reason: reasonOf(issue, found) };
}

function reasonOf(issue: z.core.$ZodIssue, found: unknown): ShapeReason {
  if (found === undefined) return { kind: 'missing' };
  switch (issue.code) {
    case 'unrecognized_keys':
      return { kind: 'unknown-key', key: issue.keys[0]!.slice(0, 80) };
    case 'invalid_type':
      return { kind: 'wrong-type', expected: issue.expected, found: typeName(found) };
    case 'invalid_value':
      return { kind: 'not-one-of', allowed: issue.values.map(String) };
    case 'too_small':
      return issue.origin === 'array'
        ? { kind: 'too-few', minimum: Number(issue.minimum) }
        : { kind: 'too-small', minimum: Number(issue.minimum) };
    case 'too_big':
      return issue.origin === 'string'
        ? { kind: 'text-too-long', maximum: Number(issue.maximum) }
        : { kind: 'too-big', maximum: Number(issue.maximum) };
    case 'invalid_format':
      return { kind: 'bad-text', wanted: wantedBy(issue.path.at(-1)) };
    case 'invalid_union':
      return 'options' in issue && issue.options
        ? { kind: 'not-one-of', allowed: issue.options.map(String) }
        : { kind: 'not-an-anchor' };
    default:
      return { kind: 'other' };
  }
}

function wantedBy(key: PropertyKey | undefined): 'id' | 'tint' | 'hash' | 'entry' {
  if (key === 'tint') return 'tint';
  if (key === 'sha256') return 'hash';
  return key === 'entry' ? 'entry' : 'id';
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let at = value;
  for (const step of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return at;
}

const isInfinite = (value: unknown): boolean => value === Infinity || value === -Infinity;

function typeName(value: unknown): string {
  if (value === null) return 'null';
  return Array.isArray(value) ? 'array' : typeof value;
}
