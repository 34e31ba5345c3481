import { done, failed, type Result } from '#base/result.ts';
import { MAX_TEXT_BYTES } from '../file/limits.ts';
import { readPattern } from '../file/read.ts';
import type { PatternTrouble } from '../trouble.ts';
import { type PatternWithPictures, readContainer } from './container.ts';
import type { ContainerTrouble } from './trouble.ts';
import { decodeUtf8 } from './utf8.ts';

/** A pattern from the bytes of any file of ours: JSON alone, or a container (which a zip's first letters give away). */
export function openPattern(
  bytes: Uint8Array,
): Result<PatternWithPictures, PatternTrouble | ContainerTrouble> {
  if (isZip(bytes)) return readContainer(bytes);
  if (bytes.length > MAX_TEXT_BYTES) {
    return failed({ kind: 'too-large', what: 'bytes', size: bytes.length, limit: MAX_TEXT_BYTES });
  }
  const text = decodeUtf8(bytes);
  if (text === null) return failed({ kind: 'not-utf8' });
  const read = readPattern(text);
  return read.ok ? done({ pattern: read.value, pictures: new Map() }) : read;
}

/** Whether some bytes begin as a zip does. */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;
