import { countInWords } from '#jobs/words/number.ts';
import type { PrickingPass } from '#pattern/order.ts';

/** What to do in one step; A and B stand on the sheet. */
export function stepInWords({ kind, ruler, order }: PrickingPass): string {
  const holes = countInWords(order.length, 'hole').replace(' ', '\u00a0');
  const from = order.length === 1 ? 'at A' : 'from A to B';
  if (ruler) return `Ruler ${from}: ${holes}`;
  switch (kind) {
    case 'outside-edge':
    case 'curve':
      return `Along the curve ${from}: ${holes}`;
    case 'ground':
      return `Along the ring ${from}: ${holes}`;
    case 'motif':
    case 'filling':
      return `By eye ${from}: ${holes}`;
  }
}
