import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

const pattern = {
  name: 'three.json',
  mimeType: 'application/json',
  buffer: Buffer.from(
    JSON.stringify({
      pins: [
        { x: 0, y: 0 },
        { x: 10, y: 0 },
        { x: 5, y: 8, confidence: 0.3, doubt: ['faint'] },
      ],
    }),
  ),
};

const pinCount = (page: Page, count: number) => page.getByText(`${count} pins.`).waitFor();

test('pins are added, chosen, moved and removed by touching the sheet, and every step is undone', async () => {
  const { page, complaints } = await bench.visit();
  await openFile(page, pattern);
  await goTo(page, 'Pins');
  await pinCount(page, 3);
  const sheet = page.locator('canvas.sheet');
  const { width, height } = (await sheet.boundingBox())!;

  await page.getByText('adds a pin').click();
  await sheet.click({ position: { x: width / 2, y: height / 2 } });
  await pinCount(page, 4);
  await page.getByText('chooses a pin').click();
  const across = page.getByLabel('Across');
  const before = await across.inputValue();
  await page.getByRole('button', { name: '0.1 mm right' }).click();
  await expect.poll(() => across.inputValue()).not.toBe(before);

  await page.getByRole('button', { name: 'Remove this pin' }).click();
  await pinCount(page, 3);
  await page.getByRole('button', { name: 'Undo' }).click();
  await pinCount(page, 4);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await pinCount(page, 3);
  await page.getByRole('button', { name: 'Redo' }).click();
  await pinCount(page, 4);

  await page.reload();
  await pinCount(page, 4);
  await page.getByRole('button', { name: 'Undo' }).click();
  await pinCount(page, 3);
  expect(complaints).toEqual([]);
});

test('doubtful pins are offered one by one', async () => {
  const { page } = await bench.visit();
  await openFile(page, pattern);
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Go through the 1 in doubt' }).click();
  await page.getByText('It is faint. Is it a pin?').waitFor();
  await page.getByRole('button', { name: 'Yes, keep it' }).click();
  await page.getByRole('region', { name: 'Pins in doubt' }).waitFor({ state: 'detached' });
});
