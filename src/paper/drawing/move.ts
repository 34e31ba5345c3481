import { type Affine, applyAffine, compose } from '#base/geometry/affine.ts';
import type { InkMark } from './mark.ts';
import type { Path } from './path.ts';

/**
 * The mark at the place where the map puts it. Places and lengths of lines follow the map; the sizes of dots,
 * the widths of strokes and the heights of letters stay as they are.
 */
export function moveMark(mark: InkMark, map: Affine): InkMark {
  switch (mark.kind) {
    case 'disc':
    case 'ring':
    case 'cross':
    case 'text':
      return { ...mark, at: applyAffine(map, mark.at) };
    case 'stroke':
    case 'fill':
      return { ...mark, path: movePath(mark.path, map) };
    case 'image':
      return { ...mark, place: compose(map, mark.place) };
  }
}

export const movePath = (path: Path, map: Affine): Path =>
  path.map((step) => {
    if (step.step === 'close') return step;
    const to = applyAffine(map, step.to);
    if (step.step !== 'curve') return { ...step, to };
    return { ...step, first: applyAffine(map, step.first), second: applyAffine(map, step.second), to };
  });
