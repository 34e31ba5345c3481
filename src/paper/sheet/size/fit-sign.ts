import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '../../drawing/mark.ts';
import { accent, ink } from '../../type/style.ts';

/** How a thread suits a size; 'thin' and 'thick' are out of reach, 'rather' ones can be worked. */
export type FitMark = 'suits' | 'rather-thin' | 'rather-thick' | 'thin' | 'thick';

export const fitWords: Readonly<Partial<Record<FitMark, string>>> = {
  suits: 'suits',
  'rather-thin': 'rather thin: the lace comes out open',
  'rather-thick': 'rather thick: the lace comes out full',
};

/** A sign for how a thread suits, told by its shape alone: it is read in any light and on any printer. Out of reach has none. */
export function fitSign(fit: FitMark, at: Point): InkMark[] {
  const note = { role: 'note', at } as const;
  switch (fit) {
    case 'suits':
      return [{ ...note, kind: 'disc', diameter: SIGN, colour: accent }];
    case 'rather-thin':
      return [{ ...note, kind: 'ring', diameter: SIGN, width: 0.3, colour: ink }];
    case 'rather-thick':
      return [{ ...note, kind: 'ring', diameter: SIGN, width: 0.95, colour: ink }];
    case 'thin':
    case 'thick':
      return [];
  }
}

const SIGN = 3.2;
