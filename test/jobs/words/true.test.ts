import { expect, test } from 'vitest';
import { compose, rotation, scaling } from '#base/geometry/affine.ts';
import { readGroundAngle } from '#jobs/true/angle.ts';
import { copyInWords, foundInWords, takenInWords } from '#jobs/words/true.ts';

const nothing = { moved: 0, added: 0, dropped: 0, copy: false };

test('what taking a proposal does is told before and afterwards', () => {
  const all = { moved: 12, added: 1, dropped: 2, copy: true };
  expect(takenInWords(all, '0.3 mm', 'would')).toBe(
    '12 pins would move, the farthest by 0.3 mm; the whole copy would be put right; 1 missing pin would be put in; 2 stray pins would be taken out.',
  );
  expect(takenInWords(all, '0.3 mm', 'did')).toBe(
    '12 pins moved, the farthest by 0.3 mm; the whole copy was put right; 1 missing pin was put in; 2 stray pins were taken out.',
  );
  expect(takenInWords({ ...nothing, added: 2 }, '', 'did')).toBe('2 missing pins were put in.');
  expect(takenInWords(nothing, '', 'would')).toBe('Nothing would change.');
});

test('what copying did is told from the map that undoes it', () => {
  expect(copyInWords(scaling(1.02), 'mm')).toBe('made 102 % across and 102 % down, and skewed by 0°');
  const skewed = { a: 1, b: 0, c: Math.sin(Math.PI / 60), d: Math.cos(Math.PI / 60), e: 5, f: 6 };
  expect(copyInWords(compose(rotation(0.4), skewed), 'mm')).toBe(
    'made 100 % across and 100 % down, and skewed by 3°',
  );
});

test('what was found is told with how many pins belong to it', () => {
  expect(foundInWords(9, 8, [{ kind: 'lattice' }, { kind: 'lattice' }, { kind: 'repeat' }])).toBe(
    '8 of 9 pins belong to 2 lattices and 1 repeat.',
  );
  expect(foundInWords(1, 0, [])).toContain('Nothing regular was found among 1 pin');
});

test.each([
  ['45', 45],
  ['52,5°', 52.5],
  ['0', null],
  ['90', null],
  ['-4', null],
  ['steep', null],
])('an angle typed as %j', (text, degrees) => {
  expect(readGroundAngle(text)).toBe(degrees);
});
