import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { guidesOf } from '#craft/draft/guides/guides.ts';
import { countOf } from '#jobs/draft/additions.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { violations } from '../support/bench/access.ts';
import { commanded, draftedAnew, fromRecipe, pinPlaces } from '../support/bench/draft.ts';
import { everyTapCounts, savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

const said = (page: Page, words: string) =>
  page.locator('#announced', { hasText: words }).waitFor({ state: 'attached' });
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const press = async (page: Page, name: string) => {
  await button(page, name).focus();
  await page.keyboard.press('Enter');
};
const counts = ({ recipe }: Pattern, ...lists: readonly string[]) =>
  lists.map((list) => countOf(recipe!, list));

test('by keyboard a plait, a leaf, a join and a tape are added, chosen at once, and each is one step', async () => {
  const { page, complaints } = await bench.visit();
  await fromRecipe(page, /^Tidal flower/);
  const LISTS = ['plaits', 'leaves', 'joins', 'tapes'];
  const before = await savedPattern(page);
  expect(counts(before, ...LISTS)).toEqual([1, 1, 0, 2]);
  for (const [one, title] of [
    ['plait', 'Plait 2, point 1'],
    ['leaf', 'Leaf 2, point 1'],
    ['join', 'Join 1, point 1'],
    ['tape', 'Tape 3, point 1'],
  ] as const) {
    await press(page, `Add a ${one}`);
    await page.getByRole('heading', { name: title }).waitFor();
    await said(page, `Added ${title.slice(0, title.indexOf(',')).toLowerCase()}.`);
  }
  expect(await page.getByText('Tape 3', { exact: true }).last().isVisible()).toBe(true);
  const after = await savedPattern(page);
  expect(counts(after, ...LISTS)).toEqual([2, 2, 1, 3]);
  expect(pinPlaces(after)).toEqual(pinPlaces(draftedAnew(after)));

  for (const left of [3, 2, 1, 0]) {
    await press(page, 'Undo');
    await expect
      .poll(async () => counts(await savedPattern(page), ...LISTS))
      .toEqual([1, 1, 0, 2].map((count, at) => count + (at < left ? 1 : 0)));
  }
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(before));
  expect(await button(page, 'Undo').isDisabled()).toBe(true);
  expect(complaints).toEqual([]);
});

test('a motif is added beside the others by touch, and taken out again', async () => {
  const { page, complaints } = await bench.visit({ hasTouch: true });
  await everyTapCounts(page);
  await fromRecipe(page, /^Window sampler/);
  const before = await savedPattern(page);
  const [count] = counts(before, 'motifs');
  await button(page, 'Add a motif').tap();
  await page.getByRole('heading', { name: `Motif ${count! + 1}, point 1` }).waitFor();
  const added = await savedPattern(page);
  expect(counts(added, 'motifs')).toEqual([count! + 1]);
  expect(guidesOf(added.recipe!).length).toBe(2 * count! + 2);
  expect(await violations(page)).toEqual([]);

  await button(page, `Remove motif ${count! + 1}`).tap();
  await said(page, `Removed motif ${count! + 1}.`);
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(before));
  await button(page, 'Undo').tap();
  await expect.poll(async () => counts(await savedPattern(page), 'motifs')).toEqual([count! + 1]);
  expect(complaints).toEqual([]);
});

test('a mat gets a round more, whose figures show, and loses one', async () => {
  const { page, complaints } = await bench.visit();
  await fromRecipe(page, /^Compass/);
  await press(page, 'Add a round');
  await said(page, 'Added round 3.');
  await button(page, 'Remove round 3').waitFor();
  const added = await savedPattern(page);
  expect(counts(added, 'rounds')).toEqual([3]);
  expect(pinPlaces(added)).toEqual(pinPlaces(draftedAnew(added)));
  await press(page, 'Remove round 3');
  await said(page, 'Removed round 3.');
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('compass', {})));
  expect(complaints).toEqual([]);
});

test('while figures are tried nothing is added or arranged, and it is said why', async () => {
  const { page } = await bench.visit();
  await fromRecipe(page, /^Tidal flower/);
  await page.getByText('Arrange the whole pattern').click();
  await button(page, 'Turn right by 90°').waitFor();
  await page.getByText('Tape 1', { exact: true }).click();
  await button(page, 'Width: less').first().click();
  await page.getByText('You are trying figures that are not kept yet').waitFor();
  expect(await button(page, 'Turn right by 90°').count()).toBe(0);
  expect(await button(page, 'Add a plait').isDisabled()).toBe(true);
  await button(page, 'Leave it').click();
  await button(page, 'Turn right by 90°').waitFor();
  expect(await button(page, 'Add a plait').isDisabled()).toBe(false);
});

test('the ground is brought to another angle in one step, and figures speak of inches to who reads them', async () => {
  const { page, complaints } = await bench.visit();
  await page.evaluate(() => localStorage.setItem('pinlight-preferences', '{"unit":"in"}'));
  await page.reload();
  await fromRecipe(page, /^Harbour heart/);
  await page.getByText('Distance between neighbouring footside pins, inches.').waitFor();
  const before = await savedPattern(page);
  await page.getByText('Arrange the whole pattern').click();
  await page.getByLabel('Bring the ground to so many degrees').fill('60');
  await press(page, 'Bring it there');
  await page.getByText('Brought the ground to 60 degrees.').first().waitFor();
  expect(pinPlaces(await savedPattern(page))).not.toEqual(pinPlaces(before));
  await press(page, 'Undo');
  await expect.poll(async () => pinPlaces(await savedPattern(page))).toEqual(pinPlaces(before));
  expect(complaints).toEqual([]);
});
