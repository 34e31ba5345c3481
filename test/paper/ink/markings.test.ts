import { describe, expect, test } from 'vitest';
import { noFilm } from '#base/colour/film.ts';
import { distance } from '#base/geometry/point.ts';
import { plainDots } from '#paper/ink/holes.ts';
import { drawPattern } from '#paper/ink/pattern-ink.ts';
import type { Mark, Pattern } from '#pattern/pattern.ts';
import { typeface } from '../support/fonts.ts';

const pattern = (marks: readonly Mark[], areas: Pattern['areas'] = []): Pattern => ({
  unit: 'mm',
  about: {},
  pins: [
    { id: 'a', x: 10, y: 10 },
    { id: 'b', x: 20, y: 10 },
    { id: 'c', x: 20, y: 20 },
  ],
  runs: [],
  marks,
  areas,
  sizes: {},
  scale: { from: 'drafted' },
});

const draw = (marks: readonly Mark[], areas?: Pattern['areas']) =>
  drawPattern(pattern(marks, areas), { typeface, hole: plainDots, spread: 0, film: noFilm, line: 0.2 });

describe('markings', () => {
  test('a working line leaves both of its holes free', () => {
    const { markings } = draw([{ id: 'm', kind: 'line', from: { pin: 'a' }, to: { pin: 'b' } }]);
    const line = markings[0]!;
    if (line.kind !== 'stroke') throw new Error('no line');
    const ends = line.path.flatMap((step) => ('to' in step ? [step.to] : []));
    expect(ends[0]!.x).toBeCloseTo(10.55, 9);
    expect(ends[1]!.x).toBeCloseTo(19.45, 9);
    expect(ends.every(({ y }) => y === 10)).toBe(true);
  });

  test('thick gimp lies under fine lines', () => {
    const { markings } = draw([
      { id: 'm', kind: 'line', from: { pin: 'a' }, to: { pin: 'b' } },
      { id: 'g', kind: 'gimp', path: [{ pin: 'a' }, { pin: 'b' }, { pin: 'c' }], closed: true, width: 1.1 },
    ]);
    expect(markings.map(({ role }) => role)).toEqual(['gimp', 'marking']);
    expect(markings[0]).toMatchObject({ kind: 'stroke', width: 1.1 });
  });

  test('a number stands beside its pin, as near as the holes let it', () => {
    const { markings, holes } = draw([{ id: 'n', kind: 'number', at: { pin: 'a' }, value: 12 }]);
    const number = markings[0]!;
    if (number.kind !== 'text' || holes[0]!.kind !== 'disc') throw new Error('no number');
    expect(number.text).toBe('12');
    expect(distance(number.at, holes[0]!.at)).toBeLessThan(5);
  });

  test('a mark or area that names no pin of the pattern is left out with a note', () => {
    const { markings, notes } = draw(
      [{ id: 'm', kind: 'line', from: { pin: 'a' }, to: { pin: 'gone' } }],
      [{ id: 'r', outline: [{ pin: 'a' }, { pin: 'gone' }, { pin: 'c' }], stitch: 'cloth' }],
    );
    expect(markings).toEqual([]);
    expect(notes).toEqual([
      { kind: 'marks-without-pin', marks: ['r'] },
      { kind: 'marks-without-pin', marks: ['m'] },
    ]);
  });

  test('words for which the holes leave no place are left out with a note', () => {
    const crowd = Array.from({ length: 1600 }, (_, k) => ({ id: `p${k}`, x: k % 40, y: Math.floor(k / 40) }));
    const marks = [{ id: 't', kind: 'text', at: { x: 20, y: 20 }, text: 'Blossom', height: 4 } as const];
    const { markings, notes } = drawPattern(
      { ...pattern(marks), pins: crowd },
      { typeface, hole: plainDots, spread: 0, film: noFilm, line: 0.2 },
    );
    expect(markings).toEqual([]);
    expect(notes).toEqual([{ kind: 'labels-left-out', labels: ['Blossom'] }]);
  });

  test('the key names each tint once', () => {
    const corners = [{ pin: 'a' }, { pin: 'b' }, { pin: 'c' }];
    const { key, tints } = draw(
      [],
      [
        { id: 'r', outline: corners, stitch: 'cloth' },
        { id: 's', outline: corners, stitch: 'cloth' },
        { id: 't', outline: corners, stitch: 'half', tint: '#abcdef' },
        { id: 'u', outline: corners, stitch: 'ground' },
      ],
    );
    expect(key.map(({ words }) => words)).toEqual(['cloth stitch', 'half stitch']);
    expect(tints.filter(({ kind }) => kind === 'fill')).toHaveLength(3);
    expect(key[1]!.colour).toBe('#abcdef');
  });
});
