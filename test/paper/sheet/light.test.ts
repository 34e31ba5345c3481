import { describe, expect, test } from 'vitest';
import { paperNamed } from '#base/units/paper.ts';
import { cardPicture } from '#paper/sheet/light/card-picture.ts';
import type { Fault } from '#paper/sheet/light/fault-signs.ts';
import { reprickMap } from '#paper/sheet/light/reprick-map.ts';
import { sheetContext } from '#paper/sheet/sheet.ts';
import { typeface } from '../support/fonts.ts';
import { expectSheetLaws, overlappingWords } from './laws.ts';

const paper = paperNamed('A4')!;
const context = sheetContext({ name: 'A small net' }, { typeface, revision: 'r1' });
const pins = Array.from({ length: 100 }, (_, k) => ({ x: 4 * (k % 10), y: 4 * Math.floor(k / 10) }));
const faults: Fault[] = [
  { kind: 'missing', at: pins[3]! },
  { kind: 'off-centre', at: pins[25]!, hole: { x: pins[25]!.x + 0.3, y: pins[25]!.y } },
  { kind: 'oval', at: pins[40]!, angle: 0.4 },
  { kind: 'large', at: pins[77]! },
  { kind: 'unseen', at: pins[90]! },
  { kind: 'extra', at: { x: 9.5, y: 10 } },
];

describe('the map to prick again by', () => {
  const discsOf = (side: 'front' | 'back') => {
    const [sheet] = reprickMap(context, paper, pins, faults, side, 1);
    return sheet!.marks.filter((mark) => mark.kind === 'disc' && mark.role === 'hole');
  };

  test('keeps the laws of all sheets', () => {
    const sheets = reprickMap(context, paper, pins, faults, 'front', 1);
    expect(sheets).toHaveLength(1);
    expectSheetLaws(sheets[0]!);
    expect(overlappingWords(sheets[0]!)).toEqual([]);
  });

  test.each([
    ['front', 1],
    ['back', -1],
  ] as const)('is true to scale, as seen from the %s', (side, sign) => {
    const discs = discsOf(side).map((mark) => (mark.kind === 'disc' ? mark.at : { x: 0, y: 0 }));
    expect(discs).toHaveLength(pins.length);
    for (const [k, pin] of pins.entries()) {
      expect(discs[k]!.x - discs[0]!.x).toBeCloseTo(sign * (pin.x - pins[0]!.x), 9);
      expect(discs[k]!.y - discs[0]!.y).toBeCloseTo(pin.y - pins[0]!.y, 9);
    }
  });

  test('takes as many sheets as a large pattern needs', () => {
    const wide = pins.map(({ x, y }) => ({ x: 12 * x, y }));
    const sheets = reprickMap(context, paper, wide, [{ kind: 'missing', at: wide[9]! }], 'front', 1);
    expect(sheets.length).toBeGreaterThan(1);
    for (const sheet of sheets) expectSheetLaws(sheet);
  });
});

test('the picture of the card carries a sign for each fault and keeps the laws of all sheets', () => {
  const photo = {
    form: 'raster',
    width: 300,
    height: 200,
    channels: 1,
    bytes: new Uint8Array(60_000),
  } as const;
  const onPhoto = faults.map((fault) => ({
    ...fault,
    at: { x: 5 * fault.at.x + 20, y: 4 * fault.at.y + 20 },
  }));
  const sheet = cardPicture(context, paper, photo, onPhoto, 2);
  expectSheetLaws(sheet);
  expect(overlappingWords(sheet)).toEqual([]);
  expect(sheet.marks.filter(({ kind }) => kind === 'image')).toHaveLength(1);
});
