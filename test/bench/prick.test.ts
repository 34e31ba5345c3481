import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openToWork } from '#jobs/open.ts';
import { type HandRoute, routeByHand } from '#jobs/route.ts';
import { violations } from '../support/bench/access.ts';
import { goTo, jsonFile, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();
const EXAMPLE = 'examples/drafted/sea-rose.json';

/** Five pins on a line: one step, its third hole in the middle. And a second line, so that there are two. */
const rows = jsonFile('rows.json', {
  pins: [0, 12].flatMap((y) => [0, 4, 8, 12, 16].map((x) => ({ x, y }))),
});

function routeOf(bytes: Uint8Array): HandRoute {
  const opened = openToWork(bytes);
  if (!opened.ok) throw new Error(JSON.stringify(opened.trouble));
  return routeByHand(opened.value.pattern, () => {});
}

const shownStep = async (page: Page): Promise<number> =>
  Number(/^Step (\d+)/.exec((await page.getByText(/^Step \d+ of/).textContent())!)![1]);

const atStep = (page: Page, step: number) => page.getByText(`Step ${step} of`).waitFor();

/** Two presses on one button within 300 ms count once. */
const pause = (page: Page) => page.waitForTimeout(320);

async function begin(page: Page, file: Parameters<typeof openFile>[1]): Promise<void> {
  await openFile(page, file);
  await goTo(page, 'Prick');
  await page.getByRole('button', { name: 'Begin pricking' }).click();
  await atStep(page, 1);
}

test("every hole comes once, in the job's order, and the end says so", async () => {
  const { page, complaints, strangers } = await bench.visit();
  await openFile(page, EXAMPLE);
  await goTo(page, 'Prick');
  const route = routeOf(readFileSync(EXAMPLE));
  const { holes, settings, minutes } = route.effort;
  await page
    .getByText(new RegExp(`^${holes} holes, ${settings} ruler settings, .*${minutes} minutes`))
    .waitFor();
  await page.getByRole('button', { name: 'Begin pricking' }).click();
  await page.getByRole('button', { name: 'Tick off single holes' }).click();
  const seen: number[][] = [];
  for (let step = 1; step <= route.order.passes.length; step++) {
    await atStep(page, step);
    const labels = await page
      .getByRole('list', { name: 'Holes of this step' })
      .getByRole('button')
      .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')));
    seen.push(labels.map((label) => Number(/pin (\d+)$/.exec(label!)![1]) - 1));
    await pause(page);
    await page.getByRole('button', { name: 'Done, next' }).click();
  }
  await page.getByText(`All ${holes} holes are ticked off.`).waitFor();
  await page.getByText(`${holes} of ${holes} holes done.`).waitFor();
  expect(seen).toEqual(route.order.passes.map(({ order }) => [...order]));
  expect(seen.flat().sort((one, other) => one - other)).toEqual(
    Array.from({ length: holes }, (_, pin) => pin),
  );
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('the place is kept when the page is closed, goes with changed pins if wanted, and begins again only when asked twice', async () => {
  const { page, complaints } = await bench.visit();
  await begin(page, rows);
  await page.getByRole('button', { name: 'Done, next' }).click();
  await atStep(page, 2);
  await page.getByRole('button', { name: 'Tick off single holes' }).click();
  await page.getByRole('button', { name: /^Hole 2,/ }).click();
  await page.getByText('6 of 10 holes done').waitFor();
  await page.reload();
  await atStep(page, 2);
  await page.getByText('6 of 10 holes done').waitFor();

  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  await page.getByRole('button', { name: '1', exact: true }).click();
  await page.getByRole('button', { name: 'Remove this pin' }).click();
  await goTo(page, 'Prick');
  await page.getByText('Pins were added, moved or removed since you last pricked.').waitFor();
  await page.getByRole('button', { name: 'Go on with 5 holes ticked off' }).click();
  await page.getByText('5 of 9 holes done').waitFor();

  await page.getByRole('button', { name: 'Begin again …' }).click();
  await page.getByRole('button', { name: 'Leave them' }).click();
  await page.getByText('5 of 9 holes done').waitFor();
  await page.getByRole('button', { name: 'Begin again …' }).click();
  await page.getByRole('button', { name: 'Begin again', exact: true }).click();
  await page.getByText('0 of 9 holes done').waitFor();
  await atStep(page, 1);
  await page.getByRole('button', { name: 'Bring the ticks back' }).click();
  await page.getByText('5 of 9 holes done').waitFor();
  await page.getByRole('button', { name: 'Begin again …' }).press('Enter');
  await page.getByRole('button', { name: 'Begin again', exact: true }).press('Enter');
  await page.getByRole('button', { name: 'Understood' }).press('Enter');
  await page.getByText('0 of 9 holes done').waitFor();
  expect(await page.getByRole('button', { name: 'Bring the ticks back' }).count()).toBe(0);
  expect(complaints).toEqual([]);
});

test('by keyboard alone: begin, next, back, and one hole of a step on the sheet', async () => {
  const { page } = await bench.visit();
  await openFile(page, rows);
  await page.getByRole('link', { name: 'Prick', exact: true }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Begin pricking' }).focus();
  await page.keyboard.press('Enter');
  await atStep(page, 1);
  await pause(page);
  await page.keyboard.press('ArrowRight');
  await atStep(page, 2);
  await page.keyboard.press('ArrowRight');
  expect(await shownStep(page)).toBe(2);
  await pause(page);
  await page.keyboard.press('PageUp');
  await atStep(page, 1);
  await pause(page);
  await page.keyboard.press(' ');
  await atStep(page, 2);

  await page.locator('canvas.sheet').focus();
  // The sheet goes to the step once it is shown.
  await pause(page);
  // Its third hole lies in the middle, raised by half of what the buttons take.
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Enter');
  await page.getByText('1 of them are ticked off.').waitFor();
  await page.getByText('6 of 10 holes done').waitFor();
  await page.keyboard.press('Enter');
  await page.getByText('5 of 10 holes done').waitFor();
  await page.keyboard.press('ArrowRight');
  expect(await shownStep(page)).toBe(2);
});

test('the screen is asked to stay awake, and again whenever the page is seen again', async () => {
  const { page } = await bench.visit();
  await page.addInitScript(() => {
    const asked: string[] = [];
    Object.assign(window, { asked });
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: async (kind: string) => {
          asked.push(kind);
          return Object.assign(new EventTarget(), { release: async () => asked.push('released') });
        },
      },
    });
  });
  await page.reload();
  const asked = () => page.evaluate(() => (window as unknown as { asked: string[] }).asked);
  await openFile(page, rows);
  await goTo(page, 'Prick');
  await page.getByRole('button', { name: 'Begin pricking' }).waitFor();
  expect(await asked()).toEqual([]);
  await page.getByRole('button', { name: 'Begin pricking' }).click();
  await page.getByText('The screen is kept awake while this guide is open.').waitFor();
  expect(await asked()).toEqual(['screen']);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect.poll(asked).toEqual(['screen', 'screen']);
  await goTo(page, 'Pins');
  await expect.poll(async () => (await asked()).at(-1)).toBe('released');
});

test.each([
  ['cannot', 'This browser cannot keep the screen awake.'],
  ['does not let', 'This device does not let the screen be kept awake just now'],
])('it is said in words where a device %s', async (how, words) => {
  const { page, complaints } = await bench.visit();
  await page.addInitScript((how) => {
    if (how === 'cannot') Reflect.deleteProperty(Navigator.prototype, 'wakeLock');
    else
      Object.defineProperty(navigator, 'wakeLock', {
        value: { request: () => Promise.reject(new DOMException('no', 'NotAllowedError')) },
      });
  }, how);
  await page.reload();
  await begin(page, rows);
  await page.getByText(words).waitFor();
  expect(complaints).toEqual([]);
});

test('large fills the bench with the step, and the step stays legible in its panel', async () => {
  const { page } = await bench.visit({ viewport: { width: 820, height: 1180 } });
  await begin(page, rows);
  const size = () =>
    page
      .getByRole('heading', { level: 3 })
      .evaluate((title) => Number.parseFloat(getComputedStyle(title).fontSize));
  const usual = await size();
  await page.getByRole('button', { name: 'Large, for beside the pillow' }).click();
  await page.getByRole('navigation', { name: 'Stages of the work' }).waitFor({ state: 'hidden' });
  expect(await size()).toBeGreaterThan(Math.max(40, usual * 1.3));
  expect((await page.getByRole('button', { name: 'Done, next' }).boundingBox())!.height).toBeGreaterThan(100);
  await page.reload();
  await page.getByRole('navigation', { name: 'Stages of the work' }).waitFor({ state: 'hidden' });
  await page.getByRole('button', { name: 'Large, for beside the pillow' }).click();
  await page.getByRole('navigation', { name: 'Stages of the work' }).waitFor();
});

test.each(['light', 'dark'] as const)('nobody is shut out, in the %s look', async (look) => {
  const { page } = await bench.visit({ colorScheme: look });
  await openFile(page, rows);
  await goTo(page, 'Prick');
  await page.getByRole('button', { name: 'Begin pricking' }).waitFor();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Begin pricking' }).click();
  await page.getByRole('button', { name: 'Tick off single holes' }).click();
  await page.getByRole('button', { name: /^Hole 2,/ }).click();
  await page.getByRole('button', { name: 'Show all steps' }).click();
  await page.getByRole('button', { name: 'Begin again …' }).click();
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Large, for beside the pillow' }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(await violations(page)).toEqual([]);
});
