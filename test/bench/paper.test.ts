import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { silent } from '#base/progress.ts';
import { readPicture } from '#cli/picture/read.ts';
import { tracePicture } from '#jobs/trace/trace.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { violations } from '../support/bench/access.ts';
import type { NamedFile } from '../support/bench/files.ts';
import { fileAsked, giveFile, goTo, openFile, savedPattern, useBench } from '../support/bench/index.ts';
import { beginFromPaper } from '../support/bench/pages.ts';

const bench = useBench();
const EXAMPLE = 'examples/rosehip-edging.jpg';

/** What the command finds on the same picture. */
async function byCommand(file: Uint8Array): Promise<Pattern> {
  const picture = await readPicture(file);
  if (!picture.ok) throw new Error(picture.trouble.kind);
  const traced = tracePicture(picture.value, null, silent);
  if (!traced.ok) throw new Error(traced.trouble.kind);
  return traced.value.pattern;
}

/** A small page with rows of dots, which is traced in no time, and says nothing of its scale. */
async function smallPage(format: 'jpeg' | 'tiff' = 'jpeg'): Promise<NamedFile> {
  const dots = Array.from({ length: 63 }, (_, n) => {
    const [x, y] = [80 + 60 * (n % 9), 80 + 60 * Math.floor(n / 9)];
    return `<circle cx="${x}" cy="${y}" r="6"/>`;
  });
  const drawn = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="640" height="520"><rect width="640" height="520" fill="#fff"/>${dots.join('')}</svg>`,
  );
  const page = sharp(drawn).flatten({ background: '#ffffff' });
  const buffer =
    format === 'jpeg' ? await page.jpeg().toBuffer() : await page.tiff({ compression: 'lzw' }).toBuffer();
  return { name: `nine_by-seven.${format}`, mimeType: `image/${format}`, buffer };
}

test('from a scan to its pins: the same as the command finds, in one step, which is undone', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await beginFromPaper(page, EXAMPLE);
  await page.getByText('The size is taken from the file: 300 dots an inch.').waitFor();
  await page.getByText('The sheet is 148 mm by 210 mm (5.83 in by 8.27 in).').waitFor();
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText('556 pins found.').waitFor();
  await page.getByText('3 pins in doubt: the stage Pins goes through them one by one.').waitFor();

  const [here, there] = [await savedPattern(page), await byCommand(new Uint8Array(readFileSync(EXAMPLE)))];
  // Two dots in a row may come in either order, by a hair: each pin is held against the nearest of the other door's.
  expect(here.pins.length).toBe(there.pins.length);
  const away = here.pins.map((pin) =>
    Math.min(...there.pins.map(({ x, y }) => Math.hypot(x - pin.x, y - pin.y))),
  );
  expect(Math.max(...away)).toBeLessThan(0.01);
  // A faint line more or less, since colours are a rounding apart.
  expect(Math.abs(here.marks.length - there.marks.length)).toBeLessThanOrEqual(2);
  expect(here.scale).toEqual({ from: 'file', dpi: 300 });
  expect(here.about.name).toBe('rosehip edging');
  expect(here.paper!.sha256).toBe(there.paper!.sha256);

  await page.getByRole('button', { name: 'Undo' }).click();
  expect((await savedPattern(page)).pins).toEqual([]);
  await page.getByRole('button', { name: 'Redo' }).click();
  await goTo(page, 'Pins');
  await page.getByText('556 pins.').waitFor();
  expect([complaints, strangers]).toEqual([[], []]);
});

test('the page does next to nothing itself while a picture is read and its pins are found', async () => {
  const { page, context } = await bench.visit();
  await page.getByRole('button', { name: 'From paper' }).waitFor();
  const inspector = await context.newCDPSession(page);
  await inspector.send('Performance.enable', { timeDomain: 'threadTicks' });
  // What the page's own thread has worked, whatever else the machine has to do.
  const worked = async () => {
    const { metrics } = await inspector.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')!.value;
  };
  const large = await sharp(EXAMPLE).resize(3496, 4960).withMetadata({ density: 600 }).jpeg().toBuffer();
  const before = await worked();
  await beginFromPaper(page, { name: 'large.jpg', mimeType: 'image/jpeg', buffer: large });
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText(/^\d+ pins found/).waitFor();
  expect((await worked()) - before).toBeLessThan(1);
});

test('finding them anew asks first, and stopping leaves all as it was', async () => {
  const { page, complaints } = await bench.visit();
  await beginFromPaper(page, EXAMPLE);
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText('Reading the picture …').waitFor();
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText('556 pins found.').waitFor();

  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText(/This pattern has 556 pins already/).waitFor();
  await page.getByRole('button', { name: 'Keep them' }).click();
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByRole('button', { name: 'Find them anew' }).click();
  await page.getByText('Looking for the pins …').waitFor();
  await page.getByRole('button', { name: 'Stop' }).click();
  expect((await savedPattern(page)).pins.length).toBe(556);
  expect(complaints).toEqual([]);
});

test('two places and a ruler tell the size of a picture that states none, before its pins are found and after', async () => {
  const { page, complaints } = await bench.visit();
  await beginFromPaper(page, await smallPage());
  await page.getByText(/Nobody knows how large the pattern is/).waitFor();
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText(/^63 pins found/).waitFor();
  const before = await savedPattern(page);
  expect([before.unit, before.sheet]).toEqual(['px', { width: 640, height: 520 }]);

  await page.getByRole('button', { name: 'Measure a distance' }).click();
  const sheet = page.locator('canvas.sheet');
  const { width, height } = (await sheet.boundingBox())!;
  await page.getByRole('button', { name: 'Take this size' }).click();
  await page.getByText('Set both places on the sheet first.').waitFor();
  await sheet.click({ position: { x: width * 0.3, y: height * 0.4 } });
  await page.getByText('Now touch the sheet at the other end.').waitFor();
  await sheet.click({ position: { x: width * 0.7, y: height * 0.6 } });
  // Both are typed exactly: the middles of the first and the last dot of the first row, 480 dots apart.
  await page.getByRole('button', { name: 'Set the places exactly' }).click();
  await page.getByLabel('Place 1, dots across').fill('80');
  await page.getByLabel('Place 1, dots down').fill('80');
  await page.getByLabel('Place 2, dots across').fill('560,0');
  await page.getByLabel('Place 2, dots down').fill('79');
  await page.getByLabel('Distance between them').fill('48 mm');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Place 2 one dot down' }).click();
  await page.getByText('The size comes from the measured distance: 254 dots an inch.').waitFor();
  await page.getByText('The sheet is 64 mm by 52 mm (2.52 in by 2.05 in).').waitFor();
  await page.getByRole('button', { name: 'Take this size' }).click();

  const after = await savedPattern(page);
  expect([after.unit, after.scale]).toEqual(['mm', { from: 'span', dpi: 254, length: 48 }]);
  expect(after.sheet).toEqual({ width: 64, height: 52 });
  for (const [n, { x, y }] of before.pins.entries()) {
    expect(after.pins[n]!.x).toBeCloseTo(x / 10, 2);
    expect(after.pins[n]!.y).toBeCloseTo(y / 10, 2);
  }
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Measure a distance' }).waitFor();
  expect((await savedPattern(page)).pins).toEqual(before.pins);
  expect(complaints).toEqual([]);
});

test('dots an inch are typed where the picture states none, and put right where it states them wrongly', async () => {
  const { page, complaints } = await bench.visit();
  await beginFromPaper(page, await smallPage());
  await page.getByRole('button', { name: 'Find the pins' }).click();
  await page.getByText(/^63 pins found/).waitFor();
  const before = await savedPattern(page);
  const dots = page.getByLabel('Dots an inch, as the scanner was set');
  expect(await dots.inputValue()).toBe('');
  const type = async (words: string) => {
    await dots.fill(words);
    await page.keyboard.press('Enter');
  };
  await type('many');
  await page.getByText('This is no number of dots.').waitFor();
  await type('3');
  await page.getByText('which no scanner or camera makes').waitFor();
  expect((await savedPattern(page)).unit).toBe('px');

  await type('254');
  await page.getByText('The size is taken as given: 254 dots an inch.').waitFor();
  await page.getByText('The sheet is 64 mm by 52 mm (2.52 in by 2.05 in).').waitFor();
  const given = await savedPattern(page);
  expect([given.unit, given.scale, given.sheet]).toEqual([
    'mm',
    { from: 'given', dpi: 254 },
    { width: 64, height: 52 },
  ]);
  for (const [n, { x, y }] of before.pins.entries()) {
    expect(given.pins[n]!.x).toBeCloseTo(x / 10, 2);
    expect(given.pins[n]!.y).toBeCloseTo(y / 10, 2);
  }
  await type('508,0');
  await page.getByText('The sheet is 32 mm by 26 mm').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('The sheet is 64 mm by 52 mm').waitFor();

  await page.getByRole('link', { name: 'Shelf' }).click();
  await beginFromPaper(page, EXAMPLE);
  await page.getByText('The size is taken from the file: 300 dots an inch.').waitFor();
  expect(await dots.inputValue()).toBe('300');
  await type('600');
  await page.getByText('The size is taken as given: 600 dots an inch.').waitFor();
  await page.getByText('The sheet is 74 mm by 105 mm').waitFor();
  expect((await savedPattern(page)).scale).toEqual({ from: 'given', dpi: 600 });
  expect(complaints).toEqual([]);
});

test('places are set, dragged and moved by touch, mouse and keys', async () => {
  const { page } = await bench.visit();
  await beginFromPaper(page, await smallPage());
  await page.getByRole('button', { name: 'Measure a distance' }).click();
  const sheet = page.locator('canvas.sheet');
  await sheet.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Set the places exactly' }).click();
  const across = page.getByLabel('Place 1, dots across');
  const down = page.getByLabel('Place 1, dots down');
  expect(await across.inputValue()).toBe('320');
  const row = Number(await down.inputValue());

  await page.getByText('place 1', { exact: true }).click();
  await sheet.focus();
  await page.keyboard.press('Alt+ArrowLeft');
  await page.keyboard.press('Alt+Shift+ArrowDown');
  await expect.poll(() => across.inputValue()).toBe('319');
  await expect.poll(async () => Number(await down.inputValue())).toBeCloseTo(row + 10, 1);

  const box = (await sheet.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y + 8);
  await page.mouse.down();
  await page.mouse.move(x + 60, y + 40, { steps: 4 });
  await page.mouse.up();
  await expect.poll(async () => Number(await across.inputValue())).toBeGreaterThan(340);
  expect(Number(await down.inputValue())).toBeGreaterThan(row + 20);
});

test('a picture comes by "Open a file" and by dropping it, with a note where only its first page is read', async () => {
  const { page, complaints } = await bench.visit();
  const pages = await sharp(new Uint8Array(60 * 90 * 3).fill(255), {
    raw: { width: 60, height: 90, channels: 3, pageHeight: 30 },
  })
    .tiff({ compression: 'lzw', xres: 300 / 25.4, yres: 300 / 25.4 })
    .toBuffer();
  await giveFile(page, 'Open a file', { name: 'Three pages.tif', mimeType: 'image/tiff', buffer: pages });
  await page.getByText('The file holds 3 pages or frames; only the first is read.').waitFor();
  await page.getByRole('button', { name: 'Open Three pages' }).click();
  await page.getByText('The size is taken from the file: 300 dots an inch.').waitFor();
  expect(await savedPattern(page)).toMatchObject({ unit: 'mm', pins: [], paper: { width: 60, height: 30 } });

  await page.getByRole('link', { name: 'Shelf' }).click();
  const { name, mimeType, buffer } = await smallPage();
  const dropped = await page.evaluateHandle(
    ([name, type, base64]) => {
      const data = new DataTransfer();
      const bytes = Uint8Array.from(atob(base64!), (letter) => letter.charCodeAt(0));
      data.items.add(new File([bytes], name!, { type: type! }));
      return data;
    },
    [name, mimeType, buffer.toString('base64')],
  );
  await page.dispatchEvent('main', 'drop', { dataTransfer: dropped });
  await page.getByRole('heading', { level: 1, name: 'nine by seven' }).waitFor();
  await page.getByRole('heading', { level: 2, name: 'Paper' }).waitFor();
  expect(complaints).toEqual([]);
});

test('a device with a camera offers to photograph the paper too', async () => {
  const { page, complaints } = await bench.visit({ hasTouch: true, isMobile: true });
  await page.getByRole('button', { name: 'From paper' }).tap();
  const chooser = await fileAsked(page, () =>
    page.getByRole('button', { name: 'Photograph the paper' }).tap(),
  );
  const input = chooser.element();
  expect([await input.getAttribute('capture'), await input.getAttribute('accept')]).toEqual([
    'environment',
    'image/*',
  ]);
  await chooser.setFiles(await smallPage());
  await page.getByRole('heading', { level: 2, name: 'Paper' }).waitFor();
  await page.getByRole('link', { name: 'Shelf' }).tap();
  await page.getByRole('button', { name: 'From paper' }).tap();
  const other = await fileAsked(page, () => page.getByRole('button', { name: 'Choose a picture' }).tap());
  expect(await other.element().getAttribute('capture')).toBeNull();
  expect(complaints).toEqual([]);
});

test('what is no picture, or a broken one, is told in words', async () => {
  const { page, complaints } = await bench.visit();
  const refused = async (file: NamedFile, words: RegExp) => {
    await giveFile(page, 'From paper', file);
    await page.getByRole('alert').getByText(words).waitFor();
  };
  const named = (name: string, text: string | Buffer): NamedFile => ({
    ...{ name, mimeType: 'image/jpeg', buffer: Buffer.from(text) },
  });
  await refused(named('scan.jpg', '%PDF-1.7 …'), /This is a PDF, not a picture/);
  await refused(named('half.jpg', readFileSync(EXAMPLE).subarray(0, 50_000)), /damaged or breaks off/);
  await refused(named('none.jpg', ''), /empty/);
  await page.getByRole('button', { name: 'Understood' }).click();
  expect(complaints).toEqual([]);
});

test('a pattern without paper says so', async () => {
  const { page } = await bench.visit();
  await openFile(page, 'examples/drafted/ropewalk.json');
  await goTo(page, 'Paper');
  await page.getByText(/This pattern has no paper/).waitFor();
  expect(await violations(page)).toEqual([]);
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of the stage, in the ${look} look`, async () => {
    const { page } = await bench.visit({ colorScheme: look });
    await page.getByRole('button', { name: 'From paper' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await beginFromPaper(page, await smallPage('tiff'));
    await page.getByText(/Nobody knows how large the pattern is/).waitFor();
    await page.getByRole('button', { name: 'Measure a distance' }).click();
    await page.getByRole('button', { name: 'Set the places exactly' }).click();
    await page.getByRole('button', { name: 'Take this size' }).click();
    await page.getByLabel('Place 1, dots across').fill('eighty');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Find the pins' }).click();
    await page.getByText(/^63 pins found/).waitFor();
    await page.getByRole('button', { name: 'Find the pins' }).click();
    expect(await violations(page)).toEqual([]);
  });
}
