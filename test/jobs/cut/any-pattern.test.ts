import DxfParser from 'dxf-parser';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutPattern } from '#jobs/cut/cut.ts';
import type { CutWish } from '#jobs/cut/wish.ts';
import { cutTroubleInWords, cuttingNoteInWords } from '#jobs/words/cut.ts';
import { typeface } from '../../paper/support/fonts.ts';
import { arbitraryPattern } from '../../support/arbitrary-pattern.ts';
import { interpret } from '../../support/gcode.ts';

const wishes = fc.record<Partial<CutWish>>({
  format: fc.constantFrom('dxf', 'svg', 'gcode'),
  hole: fc.constantFrom(0.2, 0.5, 3),
  kerf: fc.constantFrom(0, 0.15, 0.5),
  engrave: fc.boolean(),
  ref: fc.boolean(),
  film: fc.boolean(),
  mirror: fc.boolean(),
  coupon: fc.boolean(),
  split: fc.boolean(),
  release: fc.constantFrom('R12', 'R2000'),
  holes: fc.constantFrom('circle', 'polyline', 'arcs'),
  card: fc.constantFrom({ margin: 0.1 }, { margin: 10, tabs: { count: 3, width: 2 } }),
  bed: fc.constantFrom({ width: 300, height: 200 }, { width: 30_000, height: 50_000 }),
});

test('whatever a pattern holds, every file reads back with as many holes as it says, or a sentence says why not', () => {
  fc.assert(
    fc.property(arbitraryPattern(), wishes, (pattern, wish) => {
      const cut = cutPattern({ ...pattern, unit: 'mm' }, { typeface, format: 'dxf', ...wish });
      if (!cut.ok) {
        expect(cutTroubleInWords(cut.trouble)).toMatch(/\.$/);
        return;
      }
      for (const note of cut.value.notes) expect(cuttingNoteInWords(note)).toMatch(/[.?]$/);
      for (const { text, holes } of cut.value.files) {
        expect(text).not.toMatch(/NaN|Infinity|undefined|\d[eE][-+]\d/);
        if (wish.format === 'gcode') expect(interpret(text).end.power).toBe(0);
        if (wish.format === 'dxf') {
          const entities = new DxfParser().parseSync(text)!.entities;
          expect(entities.filter(({ layer }) => layer === 'HOLES')).toHaveLength(holes);
        }
      }
    }),
    { numRuns: 60, seed: 1910 },
  );
});
