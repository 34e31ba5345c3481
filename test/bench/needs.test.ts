import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { hex } from 'wcag-contrast';
import { giveFile, goTo, jsonFile, openFile, useBench } from '../support/bench/index.ts';
import { onEveryScreen } from '../support/bench/screens.ts';
import { fileOfPins, placesOf, sheetAtRest } from '../support/bench/sheet.ts';

const bench = useBench();

const twoPins = fileOfPins([
  { x: 0, y: 0 },
  { x: 10, y: 10 },
]);

test('where the device asks for stillness nothing moves by itself', async () => {
  const { page } = await bench.visit({ reducedMotion: 'reduce' });
  const found = await onEveryScreen(page, () =>
    page.evaluate(() =>
      [...document.querySelectorAll('*')]
        .filter((element) => {
          const { transitionDuration, animationDuration, scrollBehavior } = getComputedStyle(element);
          return /[1-9]/.test(transitionDuration + animationDuration) || scrollBehavior === 'smooth';
        })
        .map((element) => element.outerHTML.slice(0, 80)),
    ),
  );
  expect(found).toEqual([]);
});

test('the words grow with the size that the browser is set to', async () => {
  const { page, context } = await bench.visit();
  await page.getByRole('button', { name: 'Open a file' }).waitFor();
  const wordHigh = () =>
    page
      .getByText(/^Pinlight turns/)
      .evaluate((words) => Number.parseFloat(getComputedStyle(words).fontSize));
  const usual = await wordHigh();
  const devtools = await context.newCDPSession(page);
  await devtools.send('Page.setFontSizes', { fontSizes: { standard: 24 } });
  await expect.poll(wordHigh).toBeCloseTo(usual * 1.5, 1);
});

test('where the device shows few colours of its own, lines tell what is chosen', async () => {
  const { page } = await bench.visit({ forcedColors: 'active', hasTouch: true });
  await openFile(page, twoPins);
  await goTo(page, 'Pins');
  const lineOf = (selector: string) =>
    page
      .locator(selector)
      .first()
      .evaluate((element) => {
        const { outlineStyle, outlineWidth } = getComputedStyle(element);
        return outlineStyle === 'none' ? '0px' : outlineWidth;
      });
  expect(await lineOf('.stages a[aria-current]')).toBe('3px');
  expect(await lineOf('.stages a:not([aria-current])')).toBe('0px');
  expect(await lineOf('.choice-one[data-selected]')).toBe('3px');
  expect(await lineOf('.choice-one:not([data-selected])')).toBe('0px');
  const buttons = await page.locator('.button:not(.quiet)').evaluateAll(
    (all) =>
      all
        .map((one) => getComputedStyle(one))
        .filter(({ borderColor, backgroundColor, borderStyle }) => {
          return borderStyle === 'none' || borderColor === backgroundColor;
        }).length,
  );
  expect(buttons).toBe(0);
  const penOnly = page.getByRole('button', { name: 'Pen only' });
  await penOnly.tap();
  expect(await penOnly.textContent()).toContain('✓');
});

test('what is drawn on the sheet stands out from it, and a pin’s state is told by a shape of its own', async () => {
  const { page } = await bench.visit();
  const pins = [
    { x: 0, y: 0 },
    { x: 20, y: 20 },
    { x: 20, y: 0, confidence: 0.3, doubt: ['faint'] },
  ];
  await openFile(page, fileOfPins(pins));
  await goTo(page, 'Pins');
  await sheetAtRest(page);
  const [usual, chosen, doubtful] = await placesOf(page, pins);
  await page.mouse.click(...chosen!);
  await page.getByRole('region', { name: 'The chosen pin' }).waitFor();
  await sheetAtRest(page);
  /** Colours met on a ring round a place. */
  const ring = (at: readonly [number, number], radius: number) =>
    page.evaluate(
      ([[x, y], radius]) => {
        const canvas = document.querySelector<HTMLCanvasElement>('canvas.sheet')!;
        const { left, top } = canvas.getBoundingClientRect();
        const context = canvas.getContext('2d')!;
        return Array.from({ length: 72 }, (_, step) => {
          const angle = (step / 36) * Math.PI;
          const [column, row] = [x - left + radius * Math.cos(angle), y - top + radius * Math.sin(angle)];
          const [r, g, b] = context.getImageData(Math.floor(column), Math.floor(row), 1, 1).data;
          return `#${[r!, g!, b!].map((part) => part.toString(16).padStart(2, '0')).join('')}`;
        });
      },
      [at, radius] as const,
    );
  const marked = (colours: readonly string[]) =>
    colours.filter((colour) => hex(colour, '#ffffff') >= 3).length / colours.length;
  const CHOSEN = 13;
  const DOUBTFUL = 9;
  expect(hex((await ring(usual!, 1))[0]!, '#ffffff')).toBeGreaterThan(3);
  expect(marked(await ring(chosen!, CHOSEN))).toBe(1);
  const dashes = marked(await ring(doubtful!, DOUBTFUL));
  expect(dashes).toBeGreaterThan(0.3);
  expect(dashes).toBeLessThan(0.8);
  expect(marked(await ring(usual!, CHOSEN))).toBe(0);
  expect(marked(await ring(doubtful!, CHOSEN))).toBe(0);
});

test('a second tap straight after the first on the same button counts for nothing, unless one wants it', async () => {
  const { page } = await bench.visit({ hasTouch: true });
  await openFile(page, twoPins);
  await goTo(page, 'Pins');
  const table = page.getByRole('button', { name: /table/ });
  const isOpen = () => page.getByRole('table').isVisible();
  await twice(page, table);
  expect(await isOpen()).toBe(true);
  await page.waitForTimeout(400);
  await table.tap();
  expect(await isOpen()).toBe(false);

  await page.getByText('adds a pin').tap();
  await page.locator('canvas.sheet').tap({ position: { x: 300, y: 200 } });
  await page.getByText('3 pins.').waitFor();
  const across = page.getByLabel('Across');
  const before = Number.parseFloat(await across.inputValue());
  await twice(page, page.getByRole('button', { name: '1 mm right', exact: true }));
  await expect.poll(async () => Number.parseFloat(await across.inputValue())).toBeCloseTo(before + 2, 2);

  await page.getByRole('link', { name: 'Shelf' }).tap();
  await page.getByRole('link', { name: 'Settings' }).tap();
  await page.getByText('count as two').tap();
  await page.goBack();
  await page.goBack();
  await table.waitFor();
  await twice(page, table);
  await page.waitForTimeout(100);
  expect(await isOpen()).toBe(false);
});

async function twice(page: Page, button: ReturnType<Page['getByRole']>): Promise<void> {
  await button.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await button.boundingBox())!;
  for (let tap = 0; tap < 2; tap++) await page.touchscreen.tap(x + width / 2, y + height / 2);
}

test('a message stays until it is dismissed, however long that takes', async () => {
  const { page } = await bench.visit();
  await page.clock.install();
  await giveFile(page, 'Open a file', jsonFile('torn.json', '{"pins":'));
  await page.getByRole('alert').waitFor();
  await page.clock.fastForward('08:00:00');
  expect(await page.getByRole('alert').isVisible()).toBe(true);
  await page.getByRole('button', { name: 'Understood' }).click();
  await page.getByRole('alert').waitFor({ state: 'detached' });
});

test('a pin is moved without a drag: it is tapped, and its place typed', async () => {
  const { page } = await bench.visit({ hasTouch: true });
  const pins = [
    { x: 0, y: 0 },
    { x: 20, y: 20 },
  ];
  await openFile(page, fileOfPins(pins));
  await goTo(page, 'Pins');
  const [, place] = await placesOf(page, pins);
  await page.touchscreen.tap(...place!);
  await page.getByRole('textbox', { name: 'Across' }).fill('12,5');
  await page.getByRole('textbox', { name: 'Down' }).fill('7.25 mm');
  await page.getByRole('textbox', { name: 'Down' }).press('Enter');
  await page.getByRole('button', { name: 'Show the pins as a table' }).tap();
  await page.getByRole('row', { name: '2 12.5 mm 7.25 mm' }).waitFor();
});
