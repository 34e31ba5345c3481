import { expect, test } from 'vitest';
import { violations } from '../support/bench/access.ts';
import { goTo, openFile, showStages, useBench } from '../support/bench/index.ts';
import { cutOff } from '../support/bench/measure-page.ts';

const bench = useBench();
const EXAMPLE = 'examples/rosehip-edging.json';
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true };

const phones = [
  ['a phone', phone.viewport],
  ['a small phone', { width: 360, height: 740 }],
] as const;

test.each(phones)(
  'the head of the bench leaves %s to the sheet, and the page does not scroll',
  async (_, viewport) => {
    const { page, complaints } = await bench.visit({ ...phone, viewport });
    await openFile(page, EXAMPLE);
    const { height } = (await page.getByRole('banner').boundingBox())!;
    expect(height).toBeLessThan(130);
    const sheet = (await page.locator('canvas.sheet').boundingBox())!;
    expect(sheet.height).toBeGreaterThan(0.4 * viewport.height - 20);
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(viewport.height);
    expect(complaints).toEqual([]);
  },
);

test.each(phones)(
  'on %s the button that ends a step is whole in sight, and no other leads on',
  async (_, viewport) => {
    const { page } = await bench.visit({ ...phone, viewport });
    await openFile(page, EXAMPLE);
    await goTo(page, 'Prick');
    await page.getByRole('button', { name: 'Next: Light' }).waitFor();
    await page.getByRole('button', { name: 'Begin pricking' }).tap();
    const done = page.getByRole('button', { name: 'Done, next' });
    await done.waitFor();
    await page.getByRole('button', { name: 'Next: Light' }).waitFor({ state: 'hidden' });
    const { y, height } = (await done.boundingBox())!;
    expect(y + height).toBeLessThanOrEqual(viewport.height);
  },
);

test('until the bench is there, the page is as dark as the device', async () => {
  const { page } = await bench.visit({ colorScheme: 'dark' });
  await page.getByRole('button', { name: 'Open a file' }).waitFor();
  const ground = await page.evaluate(() => {
    delete document.documentElement.dataset.look;
    return getComputedStyle(document.documentElement).backgroundColor;
  });
  const [red] = /\d+/.exec(ground)!;
  expect(Number(red)).toBeLessThan(60);
});

test('the button names the stage, and its list goes by keys and by finger', async () => {
  const { page } = await bench.visit(phone);
  await openFile(page, EXAMPLE);
  const button = page.getByRole('button', { name: /^Stage \d+:/ });
  const size = page.getByRole('link', { name: 'Size', exact: true });
  await expect.poll(() => button.textContent()).toBe('Stage 3: Pins');
  await button.focus();
  await page.keyboard.press('Enter');
  await size.waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Escape');
  await size.waitFor({ state: 'hidden' });
  expect(await button.evaluate((one) => one === document.activeElement)).toBe(true);
  await page.keyboard.press('Enter');
  await size.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 2, name: 'Size' }).waitFor();
  await expect.poll(() => button.textContent()).toBe('Stage 6: Size');
  expect(await button.evaluate((one) => one === document.activeElement)).toBe(true);
  await button.tap();
  await page.getByRole('link', { name: 'Look over' }).tap();
  await page.getByRole('heading', { level: 2, name: 'Look over' }).waitFor();
  await size.waitFor({ state: 'hidden' });
  await page.waitForTimeout(320);
  await button.tap();
  await size.waitFor();
  await page.locator('canvas.sheet').tap({ position: { x: 200, y: 330 } });
  await size.waitFor({ state: 'hidden' });
});

test.each(['light', 'dark'] as const)('nobody is shut out of the list, in the %s look', async (look) => {
  const { page } = await bench.visit({ ...phone, colorScheme: look });
  await openFile(page, EXAMPLE);
  expect(await violations(page)).toEqual([]);
  await showStages(page);
  expect(await violations(page)).toEqual([]);
});

test.each([
  ['on a phone', '1', phone.viewport],
  ['on a phone on its side', '1', { width: 844, height: 390 }],
  ['with text twice as large, 320 pixels wide', '2', { width: 320, height: 640 }],
])('%s every stage of the open list can be read and touched', async (_, text, viewport) => {
  const { page } = await bench.visit({ ...phone, viewport });
  await page.evaluate((size) => {
    localStorage.setItem('pinlight-preferences', JSON.stringify({ text: Number(size) }));
  }, text);
  await page.reload();
  await openFile(page, EXAMPLE);
  await showStages(page);
  expect(await cutOff(page)).toEqual([]);
  const links = await page.getByRole('navigation').getByRole('link').all();
  expect(links).toHaveLength(10);
  for (const link of links) expect((await link.boundingBox())!.height).toBeGreaterThanOrEqual(44);
  // What lies under the last of them is brought into sight, and is not covered by anything.
  await page.getByRole('link', { name: 'Light', exact: true }).click();
  await page.getByRole('heading', { level: 2, name: 'Light' }).waitFor();
  await goTo(page, 'Pins');
});
