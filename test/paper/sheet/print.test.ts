import { describe, expect, test } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { printSheets } from '#paper/sheet/print.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { edging, fine, round, tape } from '../../support/patterns/index.ts';
import { typeface } from '../support/fonts.ts';
import { holesOf, paper, plainOrder, print, stated } from '../support/print.ts';
import { expectSheetLaws, overlappingWords } from './laws.ts';

const patterns = {
  edging: edging(),
  'point ground': fine(),
  mat: round(),
  tape: tape(),
  'large edging': edging({ repeats: 14, width: 61, spacing: 5 }),
};

describe.each(Object.entries(patterns))('%s', (_, known) => {
  describe.each(['through', 'film'] as const)('%s', (way) => {
    test.each(['A4', 'Letter', 'A3', 'A5'])('on %s: the laws of all sheets', (name) => {
      const { sheets } = print(stated(known), { way, paper: paper(name), order: plainOrder(known) });
      expect(sheets.length).toBeGreaterThan(0);
      expect(new Set(sheets.map(({ id }) => id)).size).toBe(sheets.length);
      for (const sheet of sheets) {
        expectSheetLaws(sheet);
        expect(overlappingWords(sheet), sheet.id).toEqual([]);
      }
    });
  });

  test('every pin is a hole of its own on some sheet of each set', () => {
    const { sheets } = print(stated(known));
    for (const kind of ['dots', 'marking-guide']) {
      const set = sheets.filter((sheet) => sheet.kind === kind);
      const holes = set.flatMap(({ marks }) => holesOf(marks));
      expect(holes.length).toBeGreaterThanOrEqual(known.pattern.pins.length);
      if (set.length === 1) expect(holes.length).toBe(known.pattern.pins.length);
    }
  });
});

describe('distances on a sheet', () => {
  test('are those of the pattern, to the last figure', () => {
    const { pattern } = patterns.edging;
    const [dots] = print(stated(patterns.edging)).sheets;
    const holes = holesOf(dots!.marks);
    pattern.pins.slice(1).forEach((pin, k) => {
      const [a, b] = [holes[k]!, holes[k + 1]!];
      if (a.kind !== 'disc' || b.kind !== 'disc') throw new Error('not dots');
      expect(distance(a.at, b.at)).toBeCloseTo(distance(pattern.pins[k]!, pin), 9);
    });
  });
});

describe('hole marks', () => {
  const two = (apart: number): Pattern => ({
    ...stated(patterns.edging),
    pins: [
      { id: 'a', x: 50, y: 50 },
      { id: 'b', x: 50 + apart, y: 50 },
      { id: 'c', x: 80, y: 50 },
    ],
    runs: [],
    marks: [],
    areas: [],
  });
  const diameters = (pattern: Pattern, inkSpread = 0): number[] =>
    holesOf(print(pattern, { inkSpread }).sheets[0]!.marks).map((mark) =>
      mark.kind === 'disc' ? mark.diameter : 0,
    );

  test('keep their size where there is room', () => {
    expect(diameters(two(0.81))).toEqual([0.6, 0.6, 0.6]);
    expect(print(two(0.81)).notes).toEqual([]);
  });

  test('shrink where neighbours would nearly touch, with a note that names them', () => {
    const [a, b, c] = diameters(two(0.7));
    expect(a).toBeCloseTo(0.5, 9);
    expect(b).toBeCloseTo(0.5, 9);
    expect(c).toBe(0.6);
    expect(print(two(0.7)).notes).toMatchObject([{ kind: 'holes-nearly-touch', pins: ['a', 'b'] }]);
  });

  test('leave 0.2 mm of white between them after the ink has spread', () => {
    const spread = 0.1;
    const [a, b] = diameters(two(0.7), spread);
    expect(0.7 - (a! + b!) / 2 - spread).toBeCloseTo(0.2, 9);
  });

  test.each(['dot', 'ring', 'cross'] as const)('can be a %s', (mark) => {
    const { sheets } = print(two(5), { hole: { mark, diameter: 1 } });
    const kinds = { dot: 'disc', ring: 'ring', cross: 'cross' };
    expect(holesOf(sheets[0]!.marks).every(({ kind }) => kind === kinds[mark])).toBe(true);
  });
});

describe('a tiled print', () => {
  const large = stated(patterns['large edging']);

  test.each(['A5', 'A4', 'A3'])(
    'has a cover on %s that maps it, with two long distances to check',
    (size) => {
      const longer = { ...large, pins: [...large.pins, { id: 'far', x: 500, y: 700 }] };
      const { sheets } = print(longer, { paper: paper(size) });
      const cover = sheets[0]!;
      expect(cover.kind).toBe('cover');
      const words = cover.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
      for (const name of ['A1', 'B1', 'P', 'Q', 'R', 'S']) expect(words).toContain(name);
      expect(words.join(' ')).toMatch(/From cross P to R, and from Q to S: each [\d.]+ mm \([\d.]+ inches\)/);
      expect(words.join(' ')).toMatch(/[\d.]+ x [\d.]+ mm \([\d.]+ x [\d.]+ inches\)/);
    },
  );

  test('gives any of its sheets alone, just as they are in the whole set', () => {
    const all = print(large).sheets;
    const some = print(large, { only: ['b1'] }).sheets;
    expect(some.map(({ id }) => id)).toEqual(['cover', 'dots-b1', 'marking-guide-b1']);
    for (const sheet of some) expect(sheet).toEqual(all.find(({ id }) => id === sheet.id));
  });

  test('names each neighbour and says which sheet lies on top', () => {
    const a1 = print(large).sheets.find(({ id }) => id === 'dots-a1')!;
    const words = a1.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
    expect(words.some((text) => /joins B1: this sheet lies on top/.test(text))).toBe(true);
  });

  test('marks a sheet without holes as blank and keeps it in the map', () => {
    const corners: Pattern = {
      ...large,
      pins: [
        { id: 'a', x: 0, y: 0 },
        { id: 'b', x: 0, y: 600 },
      ],
      runs: [],
      marks: [],
      areas: [],
    };
    const { sheets } = print(corners);
    const words = (id: string): string =>
      sheets
        .find((sheet) => sheet.id === id)!
        .marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
        .join(' | ');
    expect(words('dots-b1')).toContain('blank, skip');
    expect(words('dots-a1')).not.toContain('blank, skip');
    expect(words('cover')).toContain('blank, skip');
  });
});

describe('what cannot be printed', () => {
  const base = { typeface, way: 'through', paper: paper('A4'), revision: 'r1' } as const;
  const trouble = (pattern: Pattern, options = {}): unknown => {
    const printed = printSheets(pattern, { ...base, ...options });
    return printed.ok ? undefined : printed.trouble.kind;
  };
  const pattern = stated(patterns.edging);

  test('each has its own name', () => {
    expect(trouble({ ...pattern, unit: 'px' })).toBe('print-scale-unknown');
    expect(trouble({ ...pattern, pins: [], runs: [], marks: [], areas: [] })).toBe('print-nothing');
    expect(trouble(pattern, { paper: paper('A6') })).toBe('print-paper-too-small');
    expect(trouble(pattern, { margins: { left: 4 } })).toBe('print-option');
    expect(trouble(pattern, { overlap: 51 })).toBe('print-option');
    expect(trouble(pattern, { inkSpread: Number.NaN })).toBe('print-option');
    expect(trouble(pattern, { only: ['A2'] })).toBe('print-no-such-sheet');
    const far = {
      ...pattern,
      pins: [
        { id: 'a', x: 0, y: 0 },
        { id: 'b', x: 9000, y: 9000 },
      ],
      runs: [],
      marks: [],
      areas: [],
    };
    expect(trouble(far)).toBe('print-too-many-sheets');
  });

  test('one pin, and pins all in one place, are printed', () => {
    const lone = { ...pattern, pins: [{ id: 'a', x: 5, y: 5 }], runs: [], marks: [], areas: [] };
    expect(holesOf(print(lone).sheets[0]!.marks)).toHaveLength(1);
    const twins = {
      ...lone,
      pins: [
        { id: 'a', x: 5, y: 5 },
        { id: 'b', x: 5, y: 5 },
      ],
    };
    expect(holesOf(print(twins).sheets[0]!.marks)).toHaveLength(2);
    expect(print(twins).notes).toMatchObject([{ kind: 'holes-nearly-touch', closest: 0 }]);
  });
});
