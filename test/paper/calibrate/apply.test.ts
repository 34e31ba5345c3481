import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyAffine } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { turned } from '#base/units/paper.ts';
import { correctMarks } from '#paper/calibrate/apply.ts';
import { correctionMap, factorsFor, noCorrection } from '#paper/calibrate/correction.ts';
import { writePdf } from '#paper/pdf/write.ts';
import { calibrationLengths, calibrationSheet } from '#paper/sheet/calibration-sheet.ts';
import { photocopySheet } from '#paper/sheet/photocopy-sheet.ts';
import { sheetContext } from '#paper/sheet/sheet.ts';
import { writeSvg } from '#paper/svg/write.ts';
import { describeWith } from '../../support/outside.ts';
import { edging } from '../../support/patterns/index.ts';
import { expectSheetLaws, overlappingWords } from '../sheet/laws.ts';
import { blobs } from '../support/blobs.ts';
import { typeface } from '../support/fonts.ts';
import { paper, print, stated } from '../support/print.ts';
import { rasterise } from '../support/raster.ts';

const A4 = paper('A4');
const factors = fc.double({ min: 0.97, max: 1.03, noNaN: true });
const leans = fc.double({ min: -0.01, max: 0.01, noNaN: true });

/** A printer that stretches and leans, in the axes of upright paper, about the middle of the page. */
const printer =
  (x: number, y: number, lean: number) =>
  (at: Point): Point => ({
    x: 105 + (at.x - 105) / x + lean * (at.y - 148.5),
    y: 148.5 + (at.y - 148.5) / y,
  });

describe('a correction', () => {
  test('undoes what its printer does, upright', () => {
    fc.assert(
      fc.property(factors, factors, leans, (x, y, lean) => {
        const map = correctionMap({ x, y, lean }, A4);
        for (const at of [
          { x: 0, y: 0 },
          { x: 205, y: 11 },
          { x: 60, y: 290 },
        ]) {
          const seen = printer(x, y, lean)(applyAffine(map, at));
          expect(distance(seen, at)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test('undoes it on a page that lies on its side, whichever way it was turned', () => {
    fc.assert(
      fc.property(factors, factors, leans, fc.boolean(), (x, y, lean, clockwise) => {
        const map = correctionMap({ x, y, lean }, turned(A4));
        // The driver turns a landscape page by a quarter on to upright paper; the picture is turned back to be read.
        const toPaper = ({ x, y }: Point): Point => (clockwise ? { x: 210 - y, y: x } : { x: y, y: 297 - x });
        const back = ({ x, y }: Point): Point => (clockwise ? { x: y, y: 210 - x } : { x: 297 - y, y: x });
        for (const at of [
          { x: 0, y: 0 },
          { x: 280, y: 11 },
          { x: 60, y: 200 },
        ]) {
          const seen = back(printer(x, y, lean)(toPaper(applyAffine(map, at))));
          expect(distance(seen, at)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test('turning the page turns its factors', () => {
    const correction = { x: 0.99, y: 1.01, lean: 0 };
    expect(factorsFor(correction, A4)).toEqual({ x: 0.99, y: 1.01 });
    expect(factorsFor(correction, turned(A4))).toEqual({ x: 1.01, y: 0.99 });
  });

  test('moves places and lines, and leaves sizes, strokes and letters', () => {
    const { marks } = print(stated(edging())).sheets[1]!;
    const moved = correctMarks(marks, A4, { x: 0.98, y: 1.02, lean: 0 });
    moved.forEach((mark, k) => {
      const before = marks[k]!;
      if (mark.kind === 'disc' && before.kind === 'disc') {
        expect(mark.diameter).toBe(before.diameter);
        expect(mark.at.x - 105).toBeCloseTo((before.at.x - 105) * 0.98, 9);
        expect(mark.at.y - 148.5).toBeCloseTo((before.at.y - 148.5) * 1.02, 9);
      }
      if (mark.kind === 'text' && before.kind === 'text')
        expect([mark.size, mark.width]).toEqual([before.size, before.width]);
      if (mark.kind === 'stroke' && before.kind === 'stroke') expect(mark.width).toBe(before.width);
    });
    expect(correctMarks(marks, A4, noCorrection)).toBe(marks);
  });

  test('changes the PDF and not the SVG', async () => {
    const [dots] = print(stated(edging())).sheets;
    const plain = { typeface, meta: { title: 'x' } };
    const corrected = await writePdf([dots!], { ...plain, correction: { x: 0.99, y: 1, lean: 0 } });
    expect(corrected).not.toEqual(await writePdf([dots!], plain));
    expect(writeSvg(dots!, typeface)).toBe(writeSvg(dots!, typeface));
  });
});

describe.each(['A4', 'Letter', 'A3'])('the calibration sheet on %s', (name) => {
  const context = sheetContext({ name: 'Printer' }, { typeface, revision: 'r1' });
  const made = calibrationSheet(context, paper(name));

  test('has baselines of at least 150 mm across and 220 mm down', () => {
    const lengths = calibrationLengths(context, paper(name))!;
    expect(lengths.across).toBeGreaterThanOrEqual(150);
    expect(lengths.down).toBeGreaterThanOrEqual(220);
    expect(lengths.falling).toBeCloseTo(Math.hypot(lengths.across, lengths.down), 9);
  });

  test('keeps the laws of all sheets', () => {
    if (!made.ok) throw new Error('refused');
    expectSheetLaws(made.value);
    expect(overlappingWords(made.value)).toEqual([]);
    const copy = photocopySheet(context, paper(name));
    if (!copy.ok) throw new Error('refused');
    expectSheetLaws(copy.value);
    expect(overlappingWords(copy.value)).toEqual([]);
  });
});

test('paper too small for a calibration sheet is refused', () => {
  const context = sheetContext({}, { typeface, revision: 'r1' });
  expect(photocopySheet(context, paper('A5'))).toMatchObject({ ok: false });
  expect(calibrationSheet(context, paper('A5'))).toMatchObject({
    ok: false,
    trouble: { kind: 'print-paper-too-small' },
  });
});

describeWith(['pdftotext'], 'a corrected calibration sheet, seen by poppler', () => {
  test('its frame is as long as it should be, times the factors', async () => {
    const context = sheetContext({}, { typeface, revision: 'r1' });
    const made = calibrationSheet(context, A4);
    const lengths = calibrationLengths(context, A4)!;
    if (!made.ok) throw new Error('refused');
    const correction = { x: 0.99, y: 1.01, lean: 0 };
    const pdf = await writePdf([made.value], { typeface, meta: { title: 'x' }, correction });
    const seen = await rasterise('poppler', pdf, 1, 600, A4);
    const frame = blobs(seen, { left: 0, top: 0, right: 210, bottom: 297 }).find(
      ({ width }) => width > 150 && width < 175,
    );
    expect(frame!.width - 0.2).toBeCloseTo(lengths.across * 0.99, 1);
    expect(frame!.height - 0.2).toBeCloseTo(lengths.down * 1.01, 1);
  });
});
