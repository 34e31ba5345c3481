import { failed, type Result } from '#base/result.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import { openPattern } from '#pattern/container/open.ts';
import { isBackup } from './backup/read.ts';
import type { Trouble } from './trouble.ts';

/**
 * Most pins that a pattern may have to be worked on. The largest piece on any pillow has a few ten thousand; more than
 * this is no lace, and would keep the machine busy for many minutes.
 */
export const MOST_PINS = 200_000;

/** A pattern to work on, from the bytes of any file of ours. */
export function openToWork(bytes: Uint8Array): Result<PatternWithPictures, Trouble> {
  const opened = openPattern(bytes);
  if (!opened.ok) return isBackup(bytes) ? failed({ kind: 'is-a-backup' }) : opened;
  const { length } = opened.value.pattern.pins;
  return length > MOST_PINS ? failed({ kind: 'too-many-pins', count: length, limit: MOST_PINS }) : opened;
}
