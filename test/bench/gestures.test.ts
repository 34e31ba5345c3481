import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type At, Fingers } from '../support/bench/fingers.ts';
import { goTo, openFile, useBench } from '../support/bench/index.ts';
import { fileOfPins, inkNear, placesOf, sheetAtRest } from '../support/bench/sheet.ts';

const bench = useBench();

const PINS = [
  { x: 0, y: 0 },
  { x: 30, y: 0 },
  { x: 30, y: 30 },
  { x: 0, y: 30 },
  { x: 15, y: 15 },
];

/** The five pins at the stage Pins, on a screen that feels fingers. */
async function pinsUnderFingers() {
  const { page, complaints } = await bench.visit({ hasTouch: true });
  await openFile(page, fileOfPins(PINS));
  await goTo(page, 'Pins');
  await sheetAtRest(page);
  const places = await placesOf(page, PINS);
  return { page, complaints, places, fingers: await Fingers.on(page) };
}

/** Says at the stage what a touch of the sheet does. */
async function touchNow(page: Page, does: string): Promise<void> {
  await page.getByText(does).tap();
  await expect.poll(() => page.getByRole('radio', { name: does }).isChecked()).toBe(true);
}

const across = (page: Page) => page.getByLabel('Across').inputValue();
const pinCount = (page: Page, count: number) => page.getByText(`${count} pins.`).waitFor();
const undoIsOff = (page: Page) => page.getByRole('button', { name: 'Undo' }).isDisabled();
const chosenPins = (page: Page) => page.getByRole('region', { name: 'The chosen pin' }).count();
const by = ([x, y]: At, right: number, down: number): At => [x + right, y + down];

async function choose(page: Page, fingers: Fingers, place: At): Promise<void> {
  await fingers.tap(place);
  await page.getByRole('region', { name: 'The chosen pin' }).waitFor();
}

test('the page neither scrolls nor selects where the sheet is touched, and does elsewhere', async () => {
  const { page } = await pinsUnderFingers();
  const styles = (selector: string) =>
    page.locator(selector).evaluate((element) => {
      const { touchAction, userSelect } = getComputedStyle(element);
      return { touchAction, userSelect };
    });
  expect(await styles('canvas.sheet')).toEqual({ touchAction: 'none', userSelect: 'none' });
  expect((await styles('.panel p >> nth=0')).userSelect).toBe('auto');
});

test('one finger chooses a pin and moves it, in one step', async () => {
  const { page, places, fingers, complaints } = await pinsUnderFingers();
  await choose(page, fingers, places[4]!);
  expect(await across(page)).toBe('15 mm');
  await fingers.glide([places[4]!], [by(places[4]!, 60, 0)]);
  await expect.poll(() => across(page)).not.toBe('15 mm');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await across(page)).toBe('15 mm');
  expect(await undoIsOff(page)).toBe(true);
  expect(complaints).toEqual([]);
});

test('a second finger takes back what the first began', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  await choose(page, fingers, places[4]!);
  const moved = by(places[4]!, 80, 0);
  await fingers.down(places[4]!);
  await fingers.glideOn([places[4]!], [moved]);
  await fingers.down(moved, by(moved, 120, 0));
  await fingers.up();
  expect(await across(page)).toBe('15 mm');
  expect(await undoIsOff(page)).toBe(true);
  await expectInkAt(page, places[0]!);
});

test('a pinch keeps what is under the fingers there, and fingers that come back bring the view back', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  const before = await inkOf(page, places);
  const middle = places[4]!;
  const close = [by(middle, -40, 0), by(middle, 40, 0)];
  const wide = [by(middle, -140, 0), by(middle, 140, 0)];
  await fingers.glide(close, wide);
  await expectInkAt(page, middle, 0.1);
  await fingers.glide(wide, close);
  expect(farthest(await inkOf(page, places), before)).toBeLessThan(0.1);

  const corner = places[2]!;
  const nearby = [by(corner, -150, -30), by(corner, -30, -150)];
  const turned = [by(corner, -200, 10), by(corner, 10, -220)];
  await fingers.down(...nearby);
  await fingers.glideOn(nearby, turned);
  await sheetAtRest(page);
  await fingers.glideOn(turned, nearby);
  await fingers.up();
  expect(farthest(await inkOf(page, places), before)).toBeLessThan(0.1);
  expect(await undoIsOff(page)).toBe(true);
});

async function inkOf(page: Page, places: readonly At[]): Promise<At[]> {
  const found: At[] = [];
  for (const place of places) found.push(await inkNear(page, place, 25));
  return found;
}

const farthest = (some: readonly At[], others: readonly At[]): number =>
  Math.max(...some.map(([x, y], index) => Math.hypot(x - others[index]![0], y - others[index]![1])));

async function expectInkAt(page: Page, place: At, within = 1): Promise<void> {
  expect(farthest([await inkNear(page, place, 25)], [place])).toBeLessThan(within);
}

test('while a pen is down the hand counts for nothing, and a pen breaks off what a finger does', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  await choose(page, fingers, places[4]!);
  await fingers.down(places[4]!);
  await fingers.glideOn([places[4]!], [by(places[4]!, 70, 0)]);
  await fingers.pen('mousePressed', places[0]!);
  await fingers.pen('mouseReleased', places[0]!);
  await fingers.up();
  await expect.poll(() => across(page)).toBe('0 mm');
  expect(await undoIsOff(page)).toBe(true);

  await fingers.pen('mousePressed', places[0]!);
  await fingers.down(places[1]!);
  await fingers.up();
  for (const far of [20, 40, 60]) await fingers.pen('mouseMoved', by(places[0]!, far, 0));
  await fingers.down(places[1]!, places[2]!);
  await fingers.move(by(places[1]!, -80, 0), by(places[2]!, 60, 0));
  await fingers.up();
  await fingers.pen('mouseReleased', by(places[0]!, 60, 0));
  await expect.poll(() => across(page)).not.toBe('0 mm');
  await expectInkAt(page, places[2]!);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await undoIsOff(page)).toBe(true);
});

test('with Pen only fingers move the sheet and nothing else, until one tap ends it', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  const penOnly = page.getByRole('button', { name: 'Pen only' });
  expect(await penOnly.getAttribute('aria-pressed')).toBe('false');
  await penOnly.tap();
  expect(await penOnly.getAttribute('aria-pressed')).toBe('true');
  await page.getByText('Fingers only move the sheet').waitFor();
  await fingers.tap(places[4]!);
  await fingers.glide([places[4]!], [by(places[4]!, 50, 20)]);
  await expectInkAt(page, by(places[4]!, 50, 20));
  expect(await chosenPins(page)).toBe(0);
  const [pin] = [by(places[4]!, 50, 20)];
  await fingers.pen('mousePressed', pin!);
  await fingers.pen('mouseReleased', pin!);
  await page.getByRole('region', { name: 'The chosen pin' }).waitFor();
  for (const viewport of [
    { width: 820, height: 1180 },
    { width: 390, height: 700 },
  ]) {
    await page.setViewportSize(viewport);
    for (const pressed of ['false', 'true']) {
      await page.waitForTimeout(350);
      await penOnly.tap();
      await expect.poll(() => penOnly.getAttribute('aria-pressed')).toBe(pressed);
    }
  }
  await page.reload();
  await page.getByText('Fingers only move the sheet').waitFor();
});

test.each([
  ['the system takes the finger away', (_: Page, fingers: Fingers) => fingers.cancel()],
  [
    'the sheet loses the finger',
    (page: Page) =>
      page.locator('canvas.sheet').evaluate((canvas: HTMLCanvasElement) => {
        for (let id = 0; id < 200; id++) if (canvas.hasPointerCapture(id)) canvas.releasePointerCapture(id);
      }),
  ],
  ['Escape is pressed', (page: Page) => page.keyboard.press('Escape')],
  [
    'the page is hidden',
    (page: Page) => page.evaluate(() => document.dispatchEvent(new Event('visibilitychange'))),
  ],
])('a drag ends with nothing changed, and the next works, where %s', async (_, interrupt) => {
  const { page, places, fingers } = await pinsUnderFingers();
  await choose(page, fingers, places[4]!);
  await fingers.down(places[4]!);
  await fingers.glideOn([places[4]!], [by(places[4]!, 70, 0)]);
  await interrupt(page, fingers);
  // Where the system took the finger, there is none to move or to lift.
  await fingers.move(by(places[4]!, 75, 0)).catch(() => {});
  await fingers.up().catch(() => {});
  expect(await across(page)).toBe('15 mm');
  expect(await undoIsOff(page)).toBe(true);
  await fingers.glide([places[4]!], [by(places[4]!, 60, 0)]);
  await expect.poll(() => across(page)).not.toBe('15 mm');
});

test('two quick taps put two pins, and zoom nothing', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  await touchNow(page, 'adds a pin');
  await fingers.tap(by(places[4]!, 80, 0));
  await page.waitForTimeout(100);
  await fingers.tap(by(places[4]!, 80, 60));
  await pinCount(page, 7);
  await fingers.tap(by(places[4]!, -80, 0));
  await fingers.tap(by(places[4]!, -80, 5));
  await pinCount(page, 9);
  expect(await page.evaluate(() => visualViewport!.scale)).toBe(1);
  await expectInkAt(page, places[0]!);
});

test('a pin is touched within 22 pixels at any zoom, and the nearest of two is meant', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  const { x, y, width, height } = (await page.locator('canvas.sheet').boundingBox())!;
  const farther = page.getByRole('button', { name: 'Farther' });
  let factor = 1;
  const placeNow = ([left, top]: At): At => [
    x + width / 2 + (left - x - width / 2) / factor,
    y + height / 2 + (top - y - height / 2) / factor,
  ];
  for (; factor < 4; factor *= 1.5) {
    const at = placeNow(places[4]!);
    await choose(page, fingers, by(at, 15, 15));
    expect(await across(page)).toBe('15 mm');
    await fingers.tap(by(at, 17, -17));
    await expect.poll(() => chosenPins(page)).toBe(0);
    await farther.click();
  }
  for (; factor < 35; factor *= 1.5) await farther.click();
  // By now all five lie within one finger's reach.
  await choose(page, fingers, placeNow(places[2]!));
  expect(await across(page)).toBe('30 mm');
  await fingers.tap(placeNow(places[3]!));
  await expect.poll(() => across(page)).toBe('0 mm');
});

test('a finger slides to the place under its loupe, and the pin is put where it is lifted', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  await touchNow(page, 'adds a pin');
  const [from, to] = [by(places[4]!, 90, 0), by(places[4]!, 90, 70)];
  await fingers.down(from);
  await fingers.glideOn([from], [to]);
  await fingers.down(to, by(to, 100, 0));
  await fingers.up();
  await pinCount(page, 5);
  await fingers.glide([from], [to]);
  await pinCount(page, 6);
  await touchNow(page, 'chooses a pin');
  await fingers.tap(by(places[0]!, -60, 0));
  await expect.poll(() => chosenPins(page)).toBe(0);
  await expectInkAt(page, to);
});

test('two fingers tapped undo, three redo, and fingers that move do neither', async () => {
  const { page, places, fingers } = await pinsUnderFingers();
  await touchNow(page, 'adds a pin');
  await fingers.tap(by(places[4]!, 80, 0));
  await pinCount(page, 6);
  const [one, two, three] = [by(places[4]!, -60, -60), by(places[4]!, 60, -60), by(places[4]!, 0, 60)];
  await fingers.tap(one, two);
  await pinCount(page, 5);
  await fingers.tap(one, two, three);
  await pinCount(page, 6);
  const all = [one, two, three];
  await fingers.down(...all);
  await fingers.move(...all.map((at) => by(at, 0, 40)));
  await fingers.up();
  await fingers.down(one, two);
  await fingers.move(by(one, 0, 40), by(two, 0, 40));
  await fingers.up();
  await sheetAtRest(page);
  await pinCount(page, 6);
});
