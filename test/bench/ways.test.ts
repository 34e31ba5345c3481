import { expect, test } from 'vitest';
import { goTo, openFile, savedPattern, useBench } from '../support/bench/index.ts';
import { fileOfPins, sheetAtRest } from '../support/bench/sheet.ts';

const bench = useBench();

const netWithGap = Array.from({ length: 49 }, (_, at) => ({
  x: 4 * (at % 7),
  y: 4 * Math.floor(at / 7),
})).filter((_, at) => at !== 24);

test('what is looked over leads to where it is mended', async () => {
  const { page, complaints } = await bench.visit();
  await openFile(page, fileOfPins(netWithGap));
  await goTo(page, 'Look over');
  await page.getByRole('button', { name: 'does not say who made it' }).click();
  const maker = page.getByLabel('Who made it');
  await expect.poll(() => maker.evaluate((field) => field === document.activeElement)).toBe(true);
  await page.keyboard.type('unknown');
  await page.keyboard.press('Enter');
  await page.getByText('does not say who made it').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'does not say what may be done' }).click();
  const permission = page.getByLabel('What you may do with it');
  await expect.poll(() => permission.evaluate((field) => field === document.activeElement)).toBe(true);
  await page.getByRole('button', { name: 'Put it away' }).click();
  const about = page.getByRole('button', { name: 'About this pattern' });
  expect(await about.evaluate((button) => button === document.activeElement)).toBe(true);

  await page.getByRole('button', { name: /missing/ }).click();
  await page.getByRole('button', { name: 'Mend it at Pins' }).click();
  await page.getByRole('heading', { level: 2, name: 'Pins' }).waitFor();
  // The gap is near the middle of the sheet, where the cursor of the keyboard begins.
  expect(await page.getByRole('radio', { name: 'adds a pin' }).isChecked()).toBe(true);
  await sheetAtRest(page);
  await page.locator('canvas.sheet').focus();
  await page.keyboard.press('Enter');
  const { pins } = await savedPattern(page);
  expect(pins).toHaveLength(netWithGap.length + 1);
  const added = pins.find(({ x, y }) => !netWithGap.some((one) => one.x === x && one.y === y))!;
  expect(Math.hypot(added.x - 12, added.y - 12)).toBeLessThan(1.5);
  expect(complaints).toEqual([]);
});

test('a pin that is looked over is chosen where it is mended, and not when one comes back by oneself', async () => {
  const { page, complaints } = await bench.visit();
  const twice = { x: 8.1, y: 8 };
  await openFile(page, fileOfPins([...netWithGap, twice]));
  await goTo(page, 'Look over');
  await page.getByRole('button', { name: /pins 17 and 49|pins 49 and 17/i }).click();
  await page.getByRole('button', { name: 'Mend it at Pins' }).click();
  await page.getByRole('button', { name: 'Remove this pin' }).waitFor();
  await goTo(page, 'Mark');
  await goTo(page, 'Pins');
  await page.getByRole('radio', { name: 'chooses a pin' }).waitFor();
  expect(await page.getByRole('button', { name: 'Remove this pin' }).count()).toBe(0);
  await goTo(page, 'Look over');
  await page.getByRole('button', { name: /pins 17 and 49|pins 49 and 17/i }).click();
  await page.getByRole('button', { name: 'Mend it at Pins' }).click();
  await page.getByRole('button', { name: 'Remove this pin' }).click();
  const { pins } = await savedPattern(page);
  expect(pins).toHaveLength(netWithGap.length);
  expect(pins.filter(({ x, y }) => Math.hypot(x - 8, y - 8) < 1)).toHaveLength(1);
  expect(complaints).toEqual([]);
});

test('the way to the next stage is in sight however long the panel is, and a stage begins at its beginning', async () => {
  for (const viewport of [
    { width: 1280, height: 800 },
    { width: 820, height: 1180 },
  ]) {
    const { page } = await bench.visit({ viewport });
    await openFile(page, 'examples/rosehip-edging.json');
    await goTo(page, 'Make');
    await page.getByText('sheets to print').waitFor();
    const next = page.getByRole('button', { name: 'Next: Prick' });
    const panel = page.locator('.panel');
    expect(await panel.evaluate((one) => one.scrollHeight > one.clientHeight + 200)).toBe(true);
    const lowest = async () => {
      const box = (await next.boundingBox())!;
      return box.y + box.height;
    };
    expect(await lowest()).toBeLessThanOrEqual(viewport.height);
    await panel.evaluate((one) => one.scrollTo(0, 300));
    expect(await lowest()).toBeLessThanOrEqual(viewport.height);
    await next.click();
    await page.getByRole('heading', { level: 2, name: 'Prick' }).waitFor();
    await expect.poll(() => panel.evaluate((one) => one.scrollTop)).toBe(0);
  }
});

test('the last pin in doubt is followed by what comes next', async () => {
  const pins = [
    { x: 0, y: 0, doubt: ['faint'] },
    { x: 5, y: 0 },
    { x: 10, y: 0 },
  ];
  const { page } = await bench.visit({ viewport: { width: 820, height: 1180 } });
  await openFile(page, fileOfPins(pins));
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Go through the 1 in doubt' }).click();
  const keep = page.getByRole('button', { name: 'Yes, keep it' });
  const { y, height } = (await keep.boundingBox())!;
  expect(y + height).toBeLessThan(1180);
  await keep.click();
  await page.getByText('No pin is in doubt any more').waitFor();
  expect(await page.locator('section:focus', { hasText: 'No pin is in doubt' }).count()).toBe(1);
});

test('whoever is here for the first time is told what Pinlight does and how to begin', async () => {
  const { page } = await bench.visit();
  await page.getByText('into a card ready to prick').waitFor();
  for (const words of ['on paper: a scan', 'a few figures draft it', 'a file that Pinlight saved']) {
    await page.getByText(words).waitFor();
  }
  await page.getByRole('link', { name: 'Open the example' }).click();
  await page.locator('canvas.sheet').waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByRole('button', { name: /pins$/ }).waitFor();
  expect(await page.getByText('into a card ready to prick').count()).toBe(0);
});

test('a refusal is in sight, and goes with its field when one goes elsewhere', async () => {
  const { page, complaints } = await bench.visit({ viewport: { width: 820, height: 1180 } });
  await openFile(page, 'examples/rosehip-edging.jpg');
  await page.getByRole('button', { name: 'Measure a distance' }).click();
  await page.getByLabel('Distance between them').fill('two');
  const refusal = page.locator('.field[data-invalid] .react-aria-FieldError');
  await expect
    .poll(() =>
      refusal.evaluate((words) => {
        const { bottom } = words.getBoundingClientRect();
        return bottom <= words.closest('.panel')!.getBoundingClientRect().bottom + 1;
      }),
    )
    .toBe(true);
  await goTo(page, 'Look over');
  await page.getByText('This pattern has no pins yet').waitFor();
  await page.getByRole('button', { name: 'Find the pins at Paper' }).click();
  await page.getByRole('heading', { level: 2, name: 'Paper' }).waitFor();
  expect(complaints).toEqual([]);
});
