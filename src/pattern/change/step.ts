import { MAX_DEPTH, MAX_LINE_LENGTH, MAX_TEXT_LENGTH, MAX_VALUES } from '../file/limits.ts';
import { isObject } from '../file/upgrades.ts';
import { parseJson } from '../json/parse.ts';
import type { Change } from './change.ts';
import { changeForFile, changeOfFile } from './file.ts';

/** One thing a person did to a pattern, as it is undone and told in the list of what was done. */
export interface Step {
  readonly change: Change;
  /** What was done, in a few words: 'Moved a pin'. */
  readonly words: string;
}

/** A step as one line of text. */
export const writeStep = ({ change, words }: Step): string =>
  JSON.stringify({ words, change: changeForFile(change) });

/** A step from its line, or null where it is none. Whether it fits a pattern is another question. */
export function readStep(line: string): Step | null {
  const parsed = parseJson(line, { length: MAX_TEXT_LENGTH, values: MAX_VALUES, depth: MAX_DEPTH });
  if (!parsed.ok || !isObject(parsed.value)) return null;
  const { words, change, ...others } = parsed.value;
  if (typeof words !== 'string' || words.length > MAX_LINE_LENGTH || Object.keys(others).length > 0)
    return null;
  const read = changeOfFile(change);
  return read.ok ? { words, change: read.value } : null;
}
