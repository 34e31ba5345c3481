import type { PaperSize } from '#base/units/paper.ts';
import type { PrickingOrder } from '#pattern/order.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Sheet, SheetContext } from './sheet.ts';

export function guidePages(
  _context: SheetContext,
  _pattern: Pattern,
  _order: PrickingOrder,
  _paper: PaperSize,
  _way: 'through' | 'film',
): ((number: number, total: number) => Sheet)[] {
  return [];
}
