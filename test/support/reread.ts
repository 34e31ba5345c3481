import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** The pattern of a file's text, which must be sound. */
export function patternIn(text: string): Pattern {
  const read = readPattern(text);
  if (!read.ok) throw new Error(JSON.stringify(read.trouble));
  return read.value;
}

/** The pattern as it comes back from its file: rounded as files are. */
export const reread = (pattern: Pattern): Pattern => patternIn(writePattern(pattern));
