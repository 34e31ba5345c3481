import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { Point } from '#base/geometry/point.ts';
import { guidesOf } from '#craft/draft/guides/guides.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import { cameraOn, toScreen } from '../../src/bench/sheet/camera.ts';
import { commanded, draftedAnew, fromRecipe, pinPlaces } from '../support/bench/draft.ts';
import { Fingers } from '../support/bench/fingers.ts';
import { savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

/** Where on the page a place of a pattern lies while the whole of it is shown, and how many pixels a millimetre has. */
async function onPage(page: Page, pattern: Pattern) {
  const { x, y, width, height } = (await page.locator('canvas.sheet').boundingBox())!;
  const camera = cameraOn(boxOfPattern(pattern), { width, height });
  return {
    scale: camera.scale,
    at: (place: Point) => {
      const { left, top } = toScreen(camera, { width, height }, place);
      return { x: x + left, y: y + top };
    },
  };
}

const outlineOf = ({ recipe }: Pattern) => guidesOf(recipe!)[0]!.points;

test('a point of an outline is dragged by a finger in one step, and Undo brings it back', async () => {
  const { page, complaints } = await bench.visit({ hasTouch: true });
  await fromRecipe(page, /^Harbour heart/);
  const before = await savedPattern(page);
  const { at, scale } = await onPage(page, before);
  const fingers = await Fingers.on(page);
  const from = at(outlineOf(before)[6]!);
  await fingers.glide([[from.x, from.y]], [[from.x + 3 * scale, from.y + 4 * scale]]);
  await page.getByRole('heading', { name: 'Motif 1, point 7' }).waitFor();
  await expect.poll(() => page.locator('#announced').textContent()).toMatch(/Moved Motif 1, point 7/);

  const after = await savedPattern(page);
  expect(outlineOf(after)[6]!.x - outlineOf(before)[6]!.x).toBeCloseTo(3, 1);
  expect(outlineOf(after)[6]!.y - outlineOf(before)[6]!.y).toBeCloseTo(4, 1);
  expect(pinPlaces(after)).toEqual(pinPlaces(draftedAnew(after)));
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('harbour-heart', {})));
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  expect(complaints).toEqual([]);
});

test('by keyboard alone a point of a tape is chosen, nudged, typed, added and removed', async () => {
  const { page, complaints } = await bench.visit();
  await fromRecipe(page, /^Estuary/);
  const before = await savedPattern(page);
  const press = async (name: string | RegExp) => {
    await page.getByRole('button', { name, exact: true }).focus();
    await page.keyboard.press('Enter');
  };
  const pointsOf = (pattern: Pattern) => guidesOf(pattern.recipe!)[1]!.points;
  await press('Show the points as a table');
  await page.getByLabel('Points of').selectOption('Tape 2');
  await press('Point 3');
  await page.getByRole('heading', { name: 'Tape 2, point 3' }).waitFor();
  const across = page.getByLabel('Across', { exact: true });
  expect(await across.inputValue()).toBe('29 mm');

  await page.locator('canvas.sheet').focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => across.inputValue()).toBe('29.1 mm');
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(() => across.inputValue()).toBe('30.1 mm');
  await expect.poll(async () => pointsOf(await savedPattern(page))[2]!.x).toBeCloseTo(30.1, 9);

  await page.getByLabel('Down', { exact: true }).fill('14,5 mm');
  await page.keyboard.press('Enter');
  await expect.poll(async () => pointsOf(await savedPattern(page))[2]!.y).toBeCloseTo(14.5, 9);
  const typed = await savedPattern(page);
  expect(pinPlaces(typed)).toEqual(pinPlaces(draftedAnew(typed)));

  await press('Add a point behind it');
  await page.getByRole('heading', { name: 'Tape 2, point 4' }).waitFor();
  await expect.poll(async () => pointsOf(await savedPattern(page)).length).toBe(9);
  await press('Remove this point');
  await expect.poll(async () => pointsOf(await savedPattern(page)).length).toBe(8);
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(typed));

  const undo = page.getByRole('button', { name: 'Undo' });
  while (!(await undo.isDisabled())) await undo.click();
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(before));
  expect(complaints).toEqual([]);
});

test('a point is added by a tap on the line, and one that cannot lie where it is put goes back', async () => {
  const { page, complaints } = await bench.visit({ hasTouch: true });
  await fromRecipe(page, /^Harbour heart/);
  const before = await savedPattern(page);
  await page.getByText('adds a point').click();
  const { at } = await onPage(page, before);
  const [heart] = guidesOf(before.recipe!);
  const spot = at(heart!.line.find(({ after, share }) => after === 5 && share >= 0.5)!);
  await page.touchscreen.tap(spot.x, spot.y);
  await page.getByRole('heading', { name: 'Motif 1, point 7' }).waitFor();
  await expect.poll(async () => outlineOf(await savedPattern(page)).length).toBe(13);

  const kept = await savedPattern(page);
  // Beyond the point across the heart: the outline would cross itself.
  await page.getByLabel('Across', { exact: true }).fill('10 mm');
  await page.keyboard.press('Enter');
  await page
    .getByRole('alert')
    .getByText(/the outline crosses itself/)
    .waitFor();
  expect(await page.getByLabel('Across', { exact: true }).inputValue()).not.toBe('10 mm');
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(kept));
  expect(complaints).toEqual([]);
});
