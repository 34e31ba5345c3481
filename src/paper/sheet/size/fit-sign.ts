import type { Point } from '#base/geometry/point.ts';
import type { InkMark } from '../../drawing/mark.ts';
import { rectangle } from '../../drawing/path.ts';
import { accent, ink, quiet } from '../../type/style.ts';

/** How a thread suits a size; 'thin' and 'thick' are out of reach, 'rather' ones can be worked. */
export type FitMark = 'suits' | 'rather-thin' | 'rather-thick' | 'thin' | 'thick';

export const fitWords: Readonly<Record<FitMark, string>> = {
  suits: 'suits',
  'rather-thin': 'rather thin: the lace comes out open',
  'rather-thick': 'rather thick: the lace comes out full',
  thin: 'too thin',
  thick: 'too thick',
};

/** A sign for how a thread suits, told by its shape alone: it is read in any light and on any printer. */
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
    case 'thick': {
      const half = fit === 'thin' ? 0.1 : 0.5;
      const bar = { left: at.x - SIGN / 2, right: at.x + SIGN / 2, top: at.y - half, bottom: at.y + half };
      return [{ kind: 'fill', role: 'note', path: rectangle(bar), colour: quiet }];
    }
  }
}

const SIGN = 3.2;
