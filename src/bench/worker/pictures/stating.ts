import type { FileScale } from '#jobs/picture/picture.ts';
import { textAt } from './headers/headers.ts';

/** Where a JPEG file has its density (ITU-T T.871), if its first part is that of JFIF. */
const AT = 13;
const DOTS_AN_INCH = 1;
const MOST = 0xffff;

/**
 * A JPEG file that states the scale which the picture's own file stated, in whole dots an inch, so that it can be told
 * of whenever the pattern is opened.
 */
export function stating(scale: FileScale, jpeg: Uint8Array): Uint8Array {
  const dots = dotsOf(scale);
  if (!dots || textAt(jpeg, 6, 5) !== 'JFIF\0') return jpeg;
  const stated = jpeg.slice();
  const view = new DataView(stated.buffer);
  view.setUint8(AT, DOTS_AN_INCH);
  for (const [index, dpi] of dots.entries()) {
    view.setUint16(AT + 1 + 2 * index, Math.min(MOST, Math.max(1, Math.round(dpi))));
  }
  return stated;
}

function dotsOf(scale: FileScale): readonly [across: number, down: number] | null {
  switch (scale.kind) {
    case 'none':
      return null;
    case 'stated':
    case 'doubtful':
      return [scale.dpi, scale.dpi];
    case 'unequal':
      return [scale.across, scale.down];
  }
}
