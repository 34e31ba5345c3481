import { expect, test } from 'vitest';
import { libraryRecipe } from '#jobs/draft/source.ts';
import { writeRecipe } from '#pattern/recipe-file/file.ts';
import { stepOf } from '../../src/bench/stages/draft/step-of.ts';
import { commanded, fromRecipe, pinPlaces } from '../support/bench/draft.ts';
import { giveFile, jsonFile, savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

/** So many repeats of the plain strip take seconds to draft. */
const MANY = 4000;

test('drafting that takes long says so, and is stopped by leaving it', async () => {
  const { page, complaints } = await bench.visit();
  await fromRecipe(page, /^Plain strip/);
  await page.getByLabel('Number of repeats', { exact: true }).fill(String(MANY));
  await page.getByText('Drafting … Leave it to stop.').waitFor();
  await page.getByRole('button', { name: 'Leave it' }).click();
  await page.getByRole('button', { name: 'Leave it' }).waitFor({ state: 'detached' });
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('plain-strip', {})));

  // The next wish does not wait for the one that was left.
  await page.getByRole('button', { name: 'Number of repeats: more' }).click();
  await page.getByText(/^Drafted /).waitFor();
  expect(complaints).toEqual([]);
});

test('a recipe file that takes long to draft can be stopped', async () => {
  const { page, complaints } = await bench.visit();
  await page.getByRole('link', { name: 'From a recipe' }).click();
  const { recipe } = libraryRecipe('plain-strip')!;
  if (recipe.kind !== 'strip') throw new Error('the plain strip is no strip');
  const text = writeRecipe({ recipe: { ...recipe, repeats: MANY }, about: { name: 'Long' } });
  await giveFile(page, 'Open a recipe file', jsonFile('long.json', text));
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
  expect(await page.getByRole('alert').count()).toBe(0);
  await page.getByRole('button', { name: /^Plain strip/ }).click();
  await page.getByText('Change a figure').waitFor();
  expect(complaints).toEqual([]);
});

test.each([
  ['a length', { takes: { kind: 'length', least: 0.1, most: 10_000 }, value: 4.7 }, 4.5, 5],
  ['a short length', { takes: { kind: 'length', least: 0.1, most: 10_000 }, value: 0.1 }, null, 0.2],
  ['a count', { takes: { kind: 'count', least: 1, most: 7 }, value: 7 }, 6, null],
  ['an angle', { takes: { kind: 'number', least: 30, most: 75 }, value: 52.5 }, 52, 53],
  ['a share', { takes: { kind: 'number', least: 0.2, most: 1 }, value: 0.4 }, 0.35, 0.45],
] as const)('%s is stepped to round figures within what it can be', (_, figure, less, more) => {
  expect(stepOf(figure)).toEqual({ less, more });
});
