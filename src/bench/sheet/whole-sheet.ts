import { type Box, isEmptyBox } from '#base/geometry/box.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';

/** All that there is of a pattern: its pins and markings, or the sheet of its paper where there are none yet. */
export function wholeSheet(pattern: Pattern): Box {
  const drawn = boxOfPattern(pattern);
  const { sheet } = pattern;
  return isEmptyBox(drawn) && sheet ? { left: 0, top: 0, right: sheet.width, bottom: sheet.height } : drawn;
}
