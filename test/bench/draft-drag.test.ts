import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Point } from '#base/geometry/point.ts';
import { guidesOf } from '#craft/draft/guides/guides.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import { cameraOn, toScreen } from '../../src/bench/sheet/camera.ts';
import { commanded, draftedAnew, fromRecipe, pinPlaces } from '../support/bench/draft.ts';
import { savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

const tapeOf = ({ recipe }: Pattern) => guidesOf(recipe!)[0]!.points;
const tidalFlower = commanded('tidal-flower', {});
const point = tapeOf(tidalFlower)[2]!;

/** The Tidal flower with the mouse pressed on a point of its outer tape. */
async function held(page: Page) {
  await fromRecipe(page, /^Tidal flower/);
  const { x, y, width, height } = (await page.locator('canvas.sheet').boundingBox())!;
  const view = { width, height };
  const camera = cameraOn(boxOfPattern(tidalFlower), view);
  const onSheet = (place: Point) => toScreen(camera, view, place);
  const to = async (across: number, down: number) => {
    const { left, top } = onSheet({ x: point.x + across, y: point.y + down });
    await page.mouse.move(x + left, y + top, { steps: 8 });
  };
  await to(0, 0);
  await page.mouse.down();
  /** What is seen where the point comes again, half a turn on: the curve that is held is not drawn there. */
  const halfATurnOn = () =>
    page.locator('canvas.sheet').evaluate(
      (canvas: HTMLCanvasElement, { left, top }) => {
        const there = new OffscreenCanvas(60, 60).getContext('2d', { willReadFrequently: true })!;
        there.drawImage(canvas, 30 - left, 30 - top, canvas.clientWidth, canvas.clientHeight);
        return there.getImageData(0, 0, 60, 60).data.join();
      },
      onSheet({ x: -point.x, y: -point.y }),
    );
  return { to, halfATurnOn };
}

const undo = (page: Page) => page.getByRole('button', { name: 'Undo' });

test('a drag shows on its way what comes of it, and is kept in one step', async () => {
  const { page, complaints } = await bench.visit();
  const { to, halfATurnOn } = await held(page);
  const before = await halfATurnOn();
  await to(1, 1);
  await expect.poll(halfATurnOn, { timeout: 20_000 }).not.toBe(before);
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(tidalFlower));

  await to(0.5, 0.5);
  await page.mouse.up();
  await page.locator('#announced', { hasText: 'Moved Tape 1, point 3' }).waitFor({ state: 'attached' });
  const after = await savedPattern(page);
  expect(tapeOf(after)[2]!.x - point.x).toBeCloseTo(0.5, 1);
  expect(tapeOf(after)[2]!.y - point.y).toBeCloseTo(0.5, 1);
  expect(pinPlaces(after)).toEqual(pinPlaces(draftedAnew(after)));

  await undo(page).click();
  await expect.poll(() => undo(page).isDisabled()).toBe(true);
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(tidalFlower));
  await expect.poll(halfATurnOn, { timeout: 20_000 }).toBe(before);
  expect(complaints).toEqual([]);
});

test('a drag that ends where the tape cannot follow keeps the last place where it could, and says why', async () => {
  const { page, complaints } = await bench.visit();
  const { to, halfATurnOn } = await held(page);
  const before = await halfATurnOn();
  await to(1, 1);
  await expect.poll(halfATurnOn, { timeout: 20_000 }).not.toBe(before);
  await to(9, 9);
  await page.mouse.up();
  await page.getByText('stays where it could lie last').waitFor();
  await page.getByText(/cannot follow so tight a bend/).waitFor();
  const after = await savedPattern(page);
  expect(tapeOf(after)[2]!.x - point.x).toBeGreaterThan(0.2);
  expect(tapeOf(after)[2]!.x - point.x).toBeLessThan(5);
  expect(pinPlaces(after)).toEqual(pinPlaces(draftedAnew(after)));
  await undo(page).click();
  await expect.poll(() => undo(page).isDisabled()).toBe(true);
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(tidalFlower));
  expect(complaints).toEqual([]);
});

test('a drag that is broken off leaves the lace as it was', async () => {
  const { page, complaints } = await bench.visit();
  const { to, halfATurnOn } = await held(page);
  const before = await halfATurnOn();
  await to(1, 1);
  await expect.poll(halfATurnOn, { timeout: 20_000 }).not.toBe(before);
  await page.keyboard.press('Escape');
  await expect.poll(halfATurnOn, { timeout: 20_000 }).toBe(before);
  await page.mouse.up();
  expect(await undo(page).isDisabled()).toBe(true);
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(tidalFlower));
  expect(complaints).toEqual([]);
});
