import { expect, test } from 'vitest';
import { commanded, draftedAnew, fromRecipe, pinPlaces } from '../support/bench/draft.ts';
import { savedPattern, useBench } from '../support/bench/index.ts';
import { sheetAtRest } from '../support/bench/sheet.ts';

const bench = useBench();

test('a recipe of the library is chosen, a figure changed and kept: the command drafts the same', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await fromRecipe(page, /^Plain strip/);
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('plain-strip', {})));

  await page.getByLabel('Spacing of the pins', { exact: true }).fill('4.5 mm');
  await page.getByLabel('Number of repeats', { exact: true }).fill('8');
  await page.getByText(/^Drafted .*: 293 pins/).waitFor();
  // What is only tried is not in the pattern.
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('plain-strip', {})));

  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByRole('button', { name: 'Leave it' }).waitFor({ state: 'detached' });
  expect(pinPlaces(await savedPattern(page))).toEqual(
    pinPlaces(commanded('plain-strip', { spacing: '4.5mm', repeats: '8' })),
  );

  await page.getByRole('button', { name: 'Undo' }).click();
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('plain-strip', {})));
  await expect.poll(() => page.getByLabel('Number of repeats', { exact: true }).inputValue()).toBe('6');
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('the sheet shows what is tried, and what was there when it is left', async () => {
  const { page } = await bench.visit();
  await fromRecipe(page, /^Breakwater/);
  const seen = async () => {
    await sheetAtRest(page);
    return page.locator('canvas.sheet').evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
  };
  const before = await seen();
  await page.getByRole('button', { name: 'Spacing of the pins: less' }).click();
  await page.getByText(/^Drafted /).waitFor();
  const tried = await seen();
  expect(tried).not.toBe(before);
  await page.getByRole('button', { name: 'Leave it' }).click();
  await page.getByRole('button', { name: 'Leave it' }).waitFor({ state: 'detached' });
  expect(await seen()).toBe(before);
});

test('what cannot be drafted is refused in words, and nothing changes', async () => {
  const { page, complaints } = await bench.visit();
  await fromRecipe(page, /^Capstan fan/);
  await page.getByText(/^Headside: /).click();
  await page.getByLabel('Pins', { exact: true }).fill('400');
  const tried = page.getByRole('region', { name: 'What you are trying' });
  await tried
    .getByRole('alert')
    .getByText(/“Headside, pins” cannot be 400/)
    .waitFor();
  expect(await tried.getByRole('button', { name: 'Keep' }).isDisabled()).toBe(true);
  await tried.getByRole('button', { name: 'Leave it' }).click();
  await tried.waitFor({ state: 'detached' });
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('capstan-fan', {})));
  expect(complaints).toEqual([]);
});

test('a part is made of another kind, and one is put in where it fits, as the command drafts them', async () => {
  const { page, complaints } = await bench.visit();
  await fromRecipe(page, /^Capstan fan/);
  const keep = async () => {
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await page.getByRole('button', { name: 'Leave it' }).waitFor({ state: 'detached' });
  };
  await page.getByText('What can be put in').click();
  await page.getByLabel('Area 1').selectOption('diamond');
  await page.getByText(/^Drafted/).waitFor();
  await keep();
  const withDiamond = await savedPattern(page);
  expect(withDiamond.recipe).toMatchObject({ areas: [{ shape: 'diamond', size: 1 }] });
  expect(withDiamond.areas.length).toBeGreaterThan(commanded('capstan-fan', {}).areas.length);
  expect(pinPlaces(withDiamond)).toEqual(pinPlaces(draftedAnew(withDiamond)));

  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText(/^Headside: /).click();
  await page.getByLabel('Kind', { exact: true }).last().selectOption('scallops');
  await page.getByText(/^Drafted/).waitFor();
  await keep();
  const scalloped = commanded('capstan-fan', { 'headside.kind': 'scallops' });
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(scalloped));
  expect(complaints).toEqual([]);
});
