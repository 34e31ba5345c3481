import { done, failed, type Result } from '#base/result.ts';
import { parseJson } from '../json/parse.ts';
import type { Pattern } from '../pattern.ts';
import type { PatternTrouble } from '../trouble.ts';
import { MAX_DEPTH, MAX_TEXT_LENGTH, MAX_VALUES } from './limits.ts';
import { findBrokenReference } from './references.ts';
import type { PatternFile } from './schema.ts';
import { checkShape } from './shape.ts';
import { upgrade } from './upgrades.ts';

/**
 * A pattern from the text of its file, of any version up to the present one; or the first thing that stops it.
 * Nothing in the text is trusted: it is measured before it is parsed, and every part of it is checked.
 */
export function readPattern(text: string): Result<Pattern, PatternTrouble> {
  const parsed = parseJson(text, { length: MAX_TEXT_LENGTH, values: MAX_VALUES, depth: MAX_DEPTH });
  if (!parsed.ok) return parsed;
  const upgraded = upgrade(parsed.value);
  if (!upgraded.ok) return upgraded;
  const shaped = checkShape(upgraded.value);
  if (!shaped.ok) return shaped;
  const pattern = patternOfFile(shaped.value);
  const broken = findBrokenReference(pattern);
  return broken ? failed(broken) : done(pattern);
}

function patternOfFile({ format: _format, version: _version, ...file }: PatternFile): Pattern {
  return {
    ...file,
    pins: withIds(file.pins, 'p'),
    runs: withIds(file.runs, 'r'),
    marks: withIds(file.marks, 'm'),
    areas: withIds(file.areas, 'a'),
  };
}

/**
 * Records without an id get one by their place: the third pin is `p3`, or where another record bears that,
 * `p3-2`, `p3-3` and so on.
 */
function withIds<Item extends { id?: string }>(
  records: readonly Item[],
  letter: string,
): (Item & { id: string })[] {
  const taken = new Set<string>();
  for (const { id } of records) if (id !== undefined) taken.add(id);
  return records.map((record, index) => {
    if (record.id !== undefined) return record as Item & { id: string };
    let id = `${letter}${index + 1}`;
    for (let copy = 2; taken.has(id); copy++) id = `${letter}${index + 1}-${copy}`;
    taken.add(id);
    // The id goes first, where people look for it.
    return { id, ...record } as Item & { id: string };
  });
}
