import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { blueFilm } from '#base/colour/film.ts';
import type { Point } from '#base/geometry/point.ts';
import { tintUnder } from '#paper/ink/tints.ts';
import { colourUnder } from '#paper/ink/under-film.ts';
import { writeContainer } from '#pattern/container/container.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern, patternFromPins } from '#pattern/pins.ts';
import { cameraOn, toScreen } from '../../src/bench/sheet/camera.ts';
import { goTo, openFile, useBench } from '../support/bench/index.ts';
import { sheetAtRest } from '../support/bench/sheet.ts';

const bench = useBench();

/** A square of four large pins, half of it tinted, on a grey picture of the paper that is a little larger. */
async function open(page: Page, withPicture: boolean) {
  const grey = new Uint8Array(
    await sharp({ create: { width: 60, height: 60, channels: 3, background: '#808080' } })
      .png()
      .toBuffer(),
  );
  const bare = patternFromPins([
    { x: 0, y: 0 },
    { x: 40, y: 0 },
    { x: 40, y: 40 },
    { x: 0, y: 40 },
  ]);
  const pattern: Pattern = {
    ...bare,
    pins: bare.pins.map((pin) => ({ ...pin, diameter: 3 })),
    areas: [{ id: 'a1', stitch: 'cloth', outline: [{ pin: 'p1' }, { pin: 'p2' }, { pin: 'p3' }] }],
    ...(withPicture && {
      paper: {
        entry: 'paper.png',
        sha256: sha256Hex(grey),
        width: 60,
        height: 60,
        toPattern: { a: 1, b: 0, c: 0, d: 1, e: -10, f: -10 },
      },
    }),
  };
  const pictures = new Map(withPicture ? [['paper.png', grey] as const] : []);
  const buffer = Buffer.from(writeContainer({ pattern, pictures }));
  await openFile(page, { name: 'film.pinlight', mimeType: 'application/zip', buffer });
  await goTo(page, 'Mark');
  return { colourAt: (place: Point) => colourAt(page, pattern, place) };
}

/** The colour that the sheet shows at a place of the pattern. */
async function colourAt(page: Page, pattern: Pattern, place: Point): Promise<string> {
  await sheetAtRest(page);
  const canvas = page.locator('canvas.sheet');
  const view = await canvas.evaluate((one) => ({ width: one.clientWidth, height: one.clientHeight }));
  const { left, top } = toScreen(cameraOn(boxOfPattern(pattern), view), view, place);
  const { x, y } = (await canvas.boundingBox())!;
  const clip = { x: Math.round(x + left), y: Math.round(y + top), width: 1, height: 1 };
  const pixel = await sharp(await page.screenshot({ clip }))
    .removeAlpha()
    .raw()
    .toBuffer();
  return `#${pixel.toString('hex')}`;
}

const film = (page: Page, name: string) =>
  page.getByRole('radiogroup', { name: 'Film over it' }).getByRole('radio', { name }).press('Space');

test('under film the paper, the pins and the tints look as they will once they are printed for it', async () => {
  const { page, complaints } = await bench.visit();
  const { colourAt } = await open(page, false);
  const [pin, paper] = [
    { x: 0, y: 40 },
    { x: 10, y: 30 },
  ];
  expect(await colourAt(paper)).toBe('#ffffff');
  await film(page, 'blue');
  expect(await colourAt(paper)).toBe(colourUnder('#ffffff', blueFilm));
  expect(await colourAt(pin)).toBe(colourUnder('#000000', blueFilm));
  // Between the lines of the hatching that lies over the tint.
  const tint = colourUnder(tintUnder('#d3b8e6', blueFilm), blueFilm);
  const seen: string[] = [];
  for (const away of [0, 0.2, 0.4, 0.6]) seen.push(await colourAt({ x: 30 + away, y: 10 + away }));
  expect(seen).toContain(tint);
  await film(page, 'none');
  expect(await colourAt(paper)).toBe('#ffffff');
  expect(await colourAt(pin)).toBe('#000000');
  expect(complaints).toEqual([]);
});

test('the picture of the paper is seen through the film too, and stays so where something small is edited', async () => {
  const { page, complaints } = await bench.visit();
  const { colourAt } = await open(page, true);
  const place = { x: 10, y: 30 };
  await expect.poll(() => colourAt(place)).not.toBe('#ffffff');
  const before = (await colourAt(place)) as `#${string}`;
  await film(page, 'blue');
  await expect.poll(() => colourAt(place)).toBe(colourUnder(before, blueFilm));
  const ring = [
    { x: 8, y: 28 },
    { x: 19, y: 23 },
  ];
  const around = [await colourAt(ring[0]!), await colourAt(ring[1]!)];
  await page.locator('.wishes').getByText('puts a number').click();
  await page.locator('canvas.sheet').focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('The number').waitFor();
  expect([await colourAt(ring[0]!), await colourAt(ring[1]!)]).toEqual(around);
  expect(around).toEqual([colourUnder(before, blueFilm), colourUnder(before, blueFilm)]);
  expect(complaints).toEqual([]);
});
