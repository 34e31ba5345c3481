import { boxOf } from '#base/geometry/box.ts';
import { between } from '#base/geometry/point.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { sayPlace } from '../say.ts';

/** An area needs a stitch, or the maker's own word for one; 'other' alone tells nobody what to work. */
export const areaWithoutStitch: Rule = {
  id: 'area-without-stitch',
  title: 'An area without a sign for its stitch',
  look: ({ pattern, placeOf }) =>
    pattern.areas
      .filter(({ stitch, name }) => (stitch ?? 'other') === 'other' && !name?.trim())
      .map(({ outline }): Finding => {
        const box = boxOf(outline.map(placeOf));
        const middle = between({ x: box.left, y: box.top }, { x: box.right, y: box.bottom }, 0.5);
        const known = Number.isFinite(middle.x);
        return {
          rule: 'area-without-stitch',
          severity: 'warning',
          at: known ? middle : null,
          pins: [],
          sentence: `An area${known ? ` round ${sayPlace(middle, pattern.unit)}` : ''} has no sign for its stitch. Say how it is worked before the film goes on; nothing can be added under it.`,
        };
      }),
};
