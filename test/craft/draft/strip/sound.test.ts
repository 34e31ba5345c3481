import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { silent } from '#base/progress.ts';
import { look } from '#jobs/look.ts';
import { usualChoice } from '#jobs/true/choice.ts';
import { straightenPattern } from '#jobs/true/straighten.ts';
import { anyStrip, drafted } from './recipes.ts';

describe('any strip, at any angle and size', () => {
  it('is looked over with no finding', () => {
    fc.assert(
      fc.property(anyStrip, (recipe) => {
        expect(look(drafted(recipe), silent).findings).toEqual([]);
      }),
      { numRuns: 400 },
    );
  });

  it('stays where it is when it is trued', () => {
    fc.assert(
      fc.property(anyStrip, (recipe) => {
        const pattern = drafted(recipe);
        const trued = straightenPattern(pattern, {}, usualChoice, silent);
        if (!trued.ok) throw new Error(JSON.stringify(trued.trouble));
        pattern.pins.forEach((pin, k) => {
          expect(distance(pin, trued.value.pattern.pins[k]!)).toBeLessThan(0.001);
        });
      }),
      { seed: 45, numRuns: 40 },
    );
  });
});
