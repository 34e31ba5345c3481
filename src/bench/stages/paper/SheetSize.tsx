import { formatInches, formatMm } from '#base/units/format-length.ts';
import { dotSize } from '#jobs/trace/paper.ts';
import type { PaperPicture, Scale } from '#pattern/pattern.ts';

/** How large the sheet is, for people who own either kind of ruler. */
export function SheetSize({ paper, scale }: { readonly paper: PaperPicture; readonly scale: Scale }) {
  const { width, height } = paper;
  if (!('dpi' in scale)) return `The sheet is ${width} by ${height} dots.`;
  const size = dotSize(scale);
  return `The sheet is ${formatMm(width * size, 1)} by ${formatMm(height * size, 1)} (${formatInches(width * size, 2)} by ${formatInches(height * size, 2)}).`;
}
