import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultsOf } from '../faults.ts';
import { anyTape, drafted } from './recipes.ts';

describe('any tape along a smooth curve', () => {
  it('is looked over with no finding, and stays where it is when it is trued', () => {
    fc.assert(
      fc.property(anyTape, (recipe) => {
        expect(faultsOf(drafted(recipe))).toEqual({ findings: [], movedTooFar: [] });
      }),
      { numRuns: 25 },
    );
  });
});
