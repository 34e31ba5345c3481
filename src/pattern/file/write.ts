import type { Pattern } from '../pattern.ts';
import { findBrokenReference } from './references.ts';
import { roundPattern } from './round.ts';
import { FORMAT, type PatternFile, VERSION } from './schema.ts';
import { checkShape } from './shape.ts';

/**
 * The text of a pattern's file: one record a line, keys in the order of the schema, numbers rounded here and nowhere
 * else, what is empty left out. Equal patterns give equal text.
 * Throws on a pattern that could not be read again: that is a fault of the program, not of a person.
 */
export function writePattern(pattern: Pattern): string {
  const shaped = checkShape({ ...pattern });
  const trouble = shaped.ok ? findBrokenReference(pattern) : shaped.trouble;
  if (!shaped.ok || trouble) throw new TypeError(`writePattern: ${JSON.stringify(trouble)}`);

  const file = roundPattern(inOrder(shaped.value, pattern));
  const parts: string[] = [`"format":"${FORMAT}"`, `"version":${VERSION}`];
  for (const [key, value] of Object.entries(file)) {
    if (key !== 'pins' && isEmpty(value)) continue;
    parts.push(`${JSON.stringify(key)}:${Array.isArray(value) ? listText(value) : JSON.stringify(value)}`);
  }
  return `{\n${parts.join(',\n')}\n}\n`;
}

/** The checked file has its keys in the schema's order; places on the paper follow the order of the pins. */
function inOrder(file: PatternFile, pattern: Pattern): Pattern {
  const stood = file.paper?.stood;
  if (!file.paper || !stood) return file as Pattern;
  const sorted: Record<string, { x: number; y: number }> = {};
  for (const { id } of pattern.pins) if (Object.hasOwn(stood, id)) sorted[id] = stood[id]!;
  return { ...file, paper: { ...file.paper, stood: sorted } } as Pattern;
}

const listText = (records: readonly unknown[]): string =>
  records.length === 0 ? '[]' : `[\n${records.map((record) => JSON.stringify(record)).join(',\n')}\n]`;

const isEmpty = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && Object.keys(value).length === 0;
