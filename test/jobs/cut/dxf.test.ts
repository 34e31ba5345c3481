import DxfParser from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { boxOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { describeWith } from '../../support/outside.ts';
import { edging } from '../../support/patterns/index.ts';
import { byEzdxf, cut, expectedCentres, farthestOff, lopsided } from './support.ts';

const pattern = lopsided();
const expected = expectedCentres(pattern, 0.6);

describeWith(['ezdxf'], 'DXF as ezdxf reads and audits it', () => {
  test.each(['R12', 'R2000'] as const)('%s: no fault, mm, every hole where its pin is', (release) => {
    const { files } = cut(pattern, { hole: 0.6, kerf: 0, release });
    const read = byEzdxf(files[0]!.text);
    expect([read.version, read.errors, read.fixes, read.units]).toEqual([
      release === 'R12' ? 'AC1009' : 'AC1015',
      [],
      [],
      4,
    ]);
    expect(read.layers).toEqual(expect.arrayContaining(['HOLES', 'INNER', 'OUTLINE', 'REF', 'ENGRAVE']));
    expect(farthestOff(read.circles, expected)).toBeLessThan(0.001);
    for (const [, , radius] of read.circles) expect(2 * radius).toBeCloseTo(0.6, 6);
    // L8 in our own words: the bounding box starts at 0,0, and says what the command says.
    const { width, height } = files[0]!;
    for (const [k, side] of [0, 0, width, height].entries()) expect(read.box[k]).toBeCloseTo(side, 3);
    const [x, y] = read.circles[0]!;
    expect(x).toBeCloseTo(files[0]!.first!.x, 3);
    expect(y).toBeCloseTo(files[0]!.first!.y, 3);
  });

  test('holes, then the outline; nothing else by default', () => {
    expect(new Set(byEzdxf(cut(pattern).files[0]!.text).order)).toEqual(new Set(['HOLES']));
    const { order, box } = byEzdxf(
      cut(pattern, { card: { margin: 10 }, engrave: true, ref: true }).files[0]!.text,
    );
    expect(order.filter((layer, k) => layer !== order[k - 1])).toEqual(['REF', 'HOLES', 'OUTLINE']);
    expect([box[0], box[1]]).toEqual([0, 0]);
  });

  test('markings are engraved first, as lines only', () => {
    const { pattern: marked } = edging({ repeats: 1, gimp: 0.7 });
    const text = { id: 't', kind: 'text', at: { x: 2, y: 3 }, text: 'Ørsted 5', height: 4 } as const;
    const { files, notes } = cut({ ...marked, marks: [...marked.marks, text] }, { engrave: true });
    const read = byEzdxf(files[0]!.text);
    expect(read.errors).toEqual([]);
    expect(read.order.filter((layer, k) => layer !== read.order[k - 1])).toEqual(['ENGRAVE', 'HOLES']);
    expect(new Set(read.types)).toEqual(new Set(['LINE', 'POLYLINE', 'CIRCLE']));
    expect(notes.map(({ kind }) => kind)).toContain('engraved-by-middle');
    expect(read.box[0]).toBeGreaterThanOrEqual(-1e-4);
    expect(read.box[1]).toBeGreaterThanOrEqual(-1e-4);
  });

  test.each(['R12', 'R2000'] as const)('%s with everything in it', (release) => {
    const { pattern: marked } = edging({ repeats: 1, gimp: 0.7 });
    const wish = { engrave: true, ref: true, card: { margin: 10, tabs: { count: 4, width: 1 } }, hole: 0.6 };
    const { files } = cut(marked, { ...wish, release, holes: 'polyline', film: true, coupon: true });
    for (const { text, width, height } of files) {
      const { errors, fixes, box } = byEzdxf(text);
      expect([errors, fixes]).toEqual([[], []]);
      expect(box[0]).toBeGreaterThanOrEqual(0);
      expect(box[2]).toBeLessThanOrEqual(width + 1e-4);
      expect(box[3]).toBeLessThanOrEqual(height + 1e-4);
    }
  });

  test('in inches', () => {
    const read = byEzdxf(cut(pattern, { hole: 0.6, unit: 'in', release: 'R2000' }).files[0]!.text);
    expect(read.units).toBe(1);
    expect(
      farthestOff(
        read.circles.map(([x, y]) => [25.4 * x, 25.4 * y]),
        expected,
      ),
    ).toBeLessThan(0.001);
  });

  test('as closed polylines that err by at most 0.01 mm', () => {
    const [file] = cut(pattern, { hole: 2, kerf: 0, holes: 'polyline' }).files;
    const { circles, types, errors } = byEzdxf(file!.text);
    expect([circles.length, types.length, errors]).toEqual([0, pattern.pins.length, []]);
  });

  test('a kerf makes holes that much smaller and the card that much larger', () => {
    const wish = { hole: 0.6, card: { margin: 10 } };
    const [plain, kerfed] = [0, 0.2].map((kerf) => byEzdxf(cut(pattern, { ...wish, kerf }).files[0]!.text));
    expect(kerfed!.circles[0]![2]).toBeCloseTo(plain!.circles[0]![2] - 0.1, 4);
    expect(kerfed!.box[2]).toBeCloseTo(plain!.box[2] + 0.2, 3);
    expect(kerfed!.box[3]).toBeCloseTo(plain!.box[3] + 0.2, 3);
  });

  test('a kerf as wide as the hole leaves points, and says so', () => {
    const { files, notes } = cut(pattern, { hole: 0.3, kerf: 0.3 });
    const read = byEzdxf(files[0]!.text);
    expect(read.points).toHaveLength(pattern.pins.length);
    expect(farthestOff(read.points, expectedCentres(pattern, 0.1))).toBeLessThan(0.001);
    expect(notes.map(({ kind }) => kind)).toContain('points-for-holes');
  });
});

describe('DXF as dxf-parser reads it', () => {
  const parse = (text: string) => new DxfParser().parseSync(text)!;

  test.each(['R12', 'R2000'] as const)('%s', (release) => {
    const read = parse(cut(pattern, { hole: 0.6, kerf: 0, release }).files[0]!.text);
    expect([read.header.$INSUNITS, read.header.$MEASUREMENT]).toEqual([4, 1]);
    const circles = read.entities as unknown as { center: { x: number; y: number }; radius: number }[];
    expect(
      farthestOff(
        circles.map(({ center }) => [center.x, center.y]),
        expected,
      ),
    ).toBeLessThan(0.001);
    expect(new Set(circles.map(({ radius }) => radius))).toEqual(new Set([0.3]));
    expect(Object.keys(read.tables.layer.layers)).toEqual([
      '0',
      'REF',
      'ENGRAVE',
      'HOLES',
      'INNER',
      'OUTLINE',
    ]);
  });
});

describe('the outline as dxf-parser reads it', () => {
  test.each(['R12', 'R2000'] as const)('%s', (release) => {
    const [file] = cut(pattern, { release, card: { margin: 10 } }).files;
    const read = new DxfParser().parseSync(file!.text)!;
    const outlines = read.entities.filter(({ layer }) => layer === 'OUTLINE');
    expect(outlines).toHaveLength(1);
    const { vertices, shape } = outlines[0] as unknown as { vertices: Point[]; shape: boolean };
    expect(shape).toBe(true);
    const { left, top, right, bottom } = boxOf(vertices);
    for (const [k, side] of [0, 0, file!.width, file!.height].entries()) {
      expect([left, top, right, bottom][k]).toBeCloseTo(side, 3);
    }
  });
});

describe('the text of the file', () => {
  const odd = { ...pattern, about: { name: 'Größe Ł\r\n  0\r\nSECTION', maker: 'Åse' } };
  const text = cut(odd, { card: { margin: 10 }, ref: true }).files[0]!.text;

  test('is ASCII, whatever the pattern is called, and no name can add a line', () => {
    expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
    expect(text.match(/\r\n {2}0\r\nSECTION/g)).toHaveLength(3);
  });

  test('has no exponents and no decimal commas, and at least four decimals', () => {
    const numbers = text.split('\r\n').filter((_, k, lines) => /^ *[1-4]\d$/.test(lines[k - 1] ?? ''));
    expect(numbers.length).toBeGreaterThan(100);
    for (const number of numbers) expect(number).toMatch(/^(-?\d+\.\d{4,}|)$/);
  });

  test('carries the cautions', () => {
    for (const word of ['unattended', 'extraction', 'NO PVC', 'hydrogen chloride', 'manual'])
      expect(text).toContain(word);
  });

  test('is the same twice', () =>
    expect(cut(odd, { card: { margin: 10 }, ref: true }).files[0]!.text).toBe(text));
});
