import { expect, test } from 'vitest';
import { violations } from '../support/bench/access.ts';
import { goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of the shelf and the stages, in the ${look} look`, async () => {
    const { page } = await bench.visit({ colorScheme: look });
    expect(await violations(page)).toEqual([]);
    await openFile(page, 'examples/rosehip-edging.json');
    await goTo(page, 'Pins');
    await page.getByRole('button', { name: 'Show the pins as a table' }).click();
    expect(await violations(page)).toEqual([]);
    await goTo(page, 'Look over');
    await page.getByText('Nothing to see to').waitFor();
    expect(await violations(page)).toEqual([]);
  });
}

test('a pin is added, nudged and removed by keyboard alone', async () => {
  const { page } = await bench.visit();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Pins');
  const count = page.getByText(/^\d+ pins\./);
  const before = Number.parseInt((await count.textContent())!, 10);
  await page.getByRole('radio', { name: /chooses a pin/ }).focus();
  await page.keyboard.press('ArrowDown');
  await page.locator('canvas.sheet').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect.poll(async () => Number.parseInt((await count.textContent())!, 10)).toBe(before + 1);
  await page.getByRole('button', { name: '0.1 mm right' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Remove this pin' }).focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => Number.parseInt((await count.textContent())!, 10)).toBe(before);
});
