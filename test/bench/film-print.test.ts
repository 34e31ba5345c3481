import { expect, test } from 'vitest';
import type { PaperSize } from '#base/units/paper.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { printUnder, requestOf } from '../../src/bench/stages/make/print/print-choices.ts';

const a4 = { name: 'A4', width: 210, height: 297 } as PaperSize;
const pattern = patternFromPins([{ x: 0, y: 0 }]);
const wishUnder = (film: 'none' | 'blue' | 'grey') =>
  requestOf(pattern, null, a4, null, printUnder(film)).wish;

test.each(['blue', 'grey'] as const)('looked at under %s film, it is printed for that film', (film) => {
  expect(wishUnder(film)).toMatchObject({ way: 'film', film });
});

test('looked at without film, it is printed to be pricked through', () => {
  expect(wishUnder('none')).toMatchObject({ way: 'through' });
  expect(wishUnder('none')).not.toHaveProperty('film');
});
