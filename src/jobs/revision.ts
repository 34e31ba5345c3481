import { sha256Hex } from '#pattern/container/sha256.ts';
import { encodeUtf8 } from '#pattern/container/utf8.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** The name of this state of a pattern on every sheet: the maker's own, or letters that change when anything does. */
export const revisionOf = (pattern: Pattern): string =>
  pattern.about.revision ?? sha256Hex(encodeUtf8(writePattern(pattern))).slice(0, 8);

/** Letters that change when a pin is added, moved or removed, and with nothing else. */
export const revisionOfPins = ({ pins }: Pattern): string =>
  sha256Hex(encodeUtf8(JSON.stringify(pins.map(({ x, y }) => [x, y])))).slice(0, 16);
