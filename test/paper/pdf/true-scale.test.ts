import { expect, test } from 'vitest';
import { type Box, growBox } from '#base/geometry/box.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { seededRandom } from '#base/random.ts';
import { rectangle } from '#paper/drawing/path.ts';
import { writePdf } from '#paper/pdf/write.ts';
import { roomOn } from '#paper/sheet/furniture.ts';
import { RULER_LENGTH } from '#paper/sheet/ruler.ts';
import { type Sheet, sheetContext } from '#paper/sheet/sheet.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { describeWith } from '../../support/outside.ts';
import { edging } from '../../support/patterns/index.ts';
import { type Blob, blobs } from '../support/blobs.ts';
import { typeface } from '../support/fonts.ts';
import { holesOf, paper, print, stated } from '../support/print.ts';
import { rasterise, rasterisers } from '../support/raster.ts';

const DPI = 600;
/** What the project promises, mm. */
const HOLE_WITHIN = 0.02;
const RULER_WITHIN = 0.05;

describeWith(['pdftotext', 'mutool', 'gs'], 'holes and rulers as independent programs see them', () => {
  const pattern = everywhere(170, 215);

  test.each(rasterisers)('A4, seen by %s', async (program) => {
    const [dots] = print(pattern).sheets;
    const seen = await rasterise(program, await pdfOf([dots!]), 1, DPI, dots!.paper);
    expectHoles(dots!, blobs(seen, insideRoom(dots!)));
    expectRulers(dots!, blobs(seen, wholeSheet(dots!)));
  });

  test.each(rasterisers)('Letter, seen by %s', async (program) => {
    const [dots] = print(pattern, { paper: paper('Letter') }).sheets;
    expect(dots!.paper.name).toBe('Letter');
    const seen = await rasterise(program, await pdfOf([dots!]), 1, DPI, dots!.paper);
    expectHoles(dots!, blobs(seen, insideRoom(dots!)));
    expectRulers(dots!, blobs(seen, wholeSheet(dots!)));
  });

  test('every tile of a large pattern', async () => {
    const large = stated(edging({ repeats: 18, width: 81, spacing: 5 }));
    const tiles = print(large).sheets.filter(({ kind }) => kind === 'dots');
    expect(tiles.length).toBeGreaterThanOrEqual(4);
    const pdf = await pdfOf(tiles);
    for (const [k, tile] of tiles.entries()) {
      const seen = await rasterise('poppler', pdf, k + 1, DPI, tile.paper);
      expectHoles(tile, blobs(seen, insideRoom(tile)));
      expectRulers(tile, blobs(seen, wholeSheet(tile)));
    }
  });
});

// Measured the same way with ImageMagick's trim on pages of other writers: 1000 x 1000 pixels at +500 from the left.
describeWith(['pdftotext', 'mutool', 'gs'], 'a square of 100 mm is 1000 pixels at 254 dpi', () => {
  test.each(rasterisers)('in %s', async (program) => {
    const path = rectangle({ left: 50, top: 100, right: 150, bottom: 200 });
    const marks = [{ kind: 'fill', role: 'guide', path, colour: '#000000' } as const];
    const pdf = await writePdf([{ paper: paper('A4'), marks }], { typeface, meta: { title: 'Square' } });
    const seen = await rasterise(program, pdf, 1, 254, paper('A4'));
    const found = blobs(seen, { left: 0, top: 0, right: 210, bottom: 297 });
    expect(found).toHaveLength(1);
    // One pixel of 0.1 mm on either side may be grey, where a page of 2100 x 2970 pixels was rounded up.
    expect(Math.abs(found[0]!.width - 100)).toBeLessThan(0.101);
    expect(Math.abs(found[0]!.height - 100)).toBeLessThan(0.101);
    // PDFium's binding stretches the page by up to half a pixel: 0.1 % of an area.
    expect(Math.abs(found[0]!.area - 10_000)).toBeLessThan(10);
    // Straight edges are snapped to whole pixels of 0.1 mm by some, so the middle may be half a pixel off.
    expect(Math.abs(found[0]!.centre.x - 100)).toBeLessThan(0.051);
    expect(Math.abs(found[0]!.centre.y - 150)).toBeLessThan(0.051);
  });
});

/** Pins by chance all over a frame, none nearer than 3 mm to another, and one in each corner. */
function everywhere(width: number, height: number): Pattern {
  const random = seededRandom(20_261_125);
  const places: Point[] = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: 0, y: height },
    { x: width, y: height },
  ];
  while (places.length < 400) {
    const place = { x: random() * width, y: random() * height };
    if (places.every((other) => distance(place, other) > 3)) places.push(place);
  }
  return {
    ...stated(edging()),
    pins: places.map((place, k) => ({ id: `p${k}`, ...place })),
    runs: [],
    marks: [],
    areas: [],
  };
}

const pdfOf = (sheets: readonly Sheet[]): Promise<Uint8Array> =>
  writePdf(sheets, { typeface, meta: { title: 'True scale' } });

const wholeSheet = ({ paper: { width, height } }: Sheet): Box => ({
  left: 0,
  top: 0,
  right: width,
  bottom: height,
});

const insideRoom = ({ paper }: Sheet): Box =>
  growBox(roomOn(sheetContext({}, { typeface, revision: 'r1' }), paper), -0.2);

/** Each hole of the sheet is found where it should be. Other spots (crosses, letters) may be there as well. */
function expectHoles(sheet: Sheet, seen: readonly Blob[]): void {
  const holes = holesOf(sheet.marks);
  expect(holes.length).toBeGreaterThan(100);
  const index = new PointIndex(seen.map(({ centre }) => centre));
  let worst = 0;
  for (const hole of holes) {
    if (hole.kind !== 'disc') throw new Error('The dots sheet has holes that are no dots');
    const near = index.within(hole.at, 0.5).map((k) => distance(seen[k]!.centre, hole.at));
    worst = Math.max(worst, Math.min(...near));
  }
  expect(worst).toBeLessThan(HOLE_WITHIN);
}

/** The two rulers are the only spots about 100 mm long and a few mm wide; end ticks are as wide as their pen. */
function expectRulers(sheet: Sheet, seen: readonly Blob[]): void {
  const pen = sheet.marks.find((mark) => mark.kind === 'stroke' && mark.role === 'guide');
  if (pen?.kind !== 'stroke') throw new Error('No ruler on the sheet');
  const pixel = 25.4 / DPI;
  const across = seen.filter(({ width, height }) => Math.abs(width - RULER_LENGTH) < 3 && height < 6);
  const down = seen.filter(({ width, height }) => Math.abs(height - RULER_LENGTH) < 3 && width < 6);
  expect([across.length, down.length]).toEqual([1, 1]);
  // The extent counts every pixel that the ink touches: up to one pixel more than the ink itself.
  expect(Math.abs(across[0]!.width - pen.width - pixel / 2 - RULER_LENGTH)).toBeLessThan(RULER_WITHIN);
  expect(Math.abs(down[0]!.height - pen.width - pixel / 2 - RULER_LENGTH)).toBeLessThan(RULER_WITHIN);
}
