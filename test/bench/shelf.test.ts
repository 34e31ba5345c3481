import AxeBuilder from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('patterns on the shelf are renamed, found by name, and removed only after being asked once more', async () => {
  const { page, complaints } = await bench.visit();
  await page.getByText('The shelf is empty').waitFor();
  await openFile(page, 'examples/rosehip-edging.json');
  await page.getByRole('link', { name: 'Shelf' }).click();
  await openFile(page, 'examples/drafted/ropewalk.json');
  await page.getByRole('link', { name: 'Shelf' }).click();
  const items = page.getByRole('listitem');
  await expect.poll(() => items.count()).toBe(2);

  await page.getByRole('button', { name: 'Rename Ropewalk' }).click();
  await page.getByRole('textbox', { name: 'Name', exact: true }).fill('Rope <b>walk</b>');
  await page.getByRole('button', { name: 'Keep this name' }).click();
  await page.getByRole('button', { name: /^Rope <b>walk<\/b>, / }).waitFor();
  await page.getByLabel('Look for a name').fill('rope');
  await expect.poll(() => items.count()).toBe(1);

  await page.getByRole('button', { name: /^Remove Rope/ }).click();
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('button', { name: /^Remove Rope/ }).click();
  await page.getByRole('button', { name: 'Remove it for good' }).click();
  await page.getByLabel('Look for a name').waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
});

test('settings hold at once and after a reload, and shut nobody out', async () => {
  const { page } = await bench.visit();
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByText('inches', { exact: true }).click();
  await page.getByText('a comma: 2,5').click();
  await page.getByText('dark', { exact: true }).click();
  await page.getByText('twice as large').click();
  expect((await new AxeBuilder({ page }).analyze()).violations.map(({ id }) => id)).toEqual([]);
  await page.reload();
  expect(await page.getByRole('radio', { name: 'inches' }).isChecked()).toBe(true);
  await page.getByRole('link', { name: 'Shelf' }).click();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  await page
    .getByRole('cell', { name: /^\d+(,\d+)? in$/ })
    .first()
    .waitFor();
});

test('an earlier version is gone back to as one step, which can be undone', async () => {
  const { page } = await bench.visit();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Pins');
  const count = async () => Number.parseInt((await page.getByText(/^\d+ pins\./).textContent())!, 10);
  const before = await count();
  await page.getByText('adds a pin').click();
  await page.locator('canvas.sheet').click({ position: { x: 30, y: 30 } });
  await expect.poll(count).toBe(before + 1);
  await page.getByText('saved in this browser').waitFor();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  await page.getByRole('button', { name: /^Go back to/ }).click();
  await expect.poll(count).toBe(before);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(count).toBe(before + 1);
});
