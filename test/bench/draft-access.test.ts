import { expect, test } from 'vitest';
import { violations } from '../support/bench/access.ts';
import { fromRecipe } from '../support/bench/draft.ts';
import { useBench } from '../support/bench/index.ts';

const bench = useBench();

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of the recipes and the drafting, in the ${look} look`, async () => {
    const { page } = await bench.visit({ colorScheme: look, reducedMotion: 'reduce' });
    await page.getByRole('link', { name: 'From a recipe' }).click();
    await page.getByRole('button', { name: /^Harbour heart/ }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: /^Breakwater/ }).click();
    await page.getByText('Change a figure').waitFor();
    await page.getByText(/^Headside: /).click();
    await page.getByRole('button', { name: 'Spacing of the pins: more' }).click();
    await page.getByRole('button', { name: 'Keep', exact: true }).waitFor();
    expect(await violations(page)).toEqual([]);

    await page.getByRole('link', { name: 'Shelf' }).click();
    await fromRecipe(page, /^Harbour heart/);
    await page.getByRole('button', { name: 'Show the points as a table' }).click();
    await page.getByRole('button', { name: 'Point 2', exact: true }).click();
    await page.getByRole('heading', { name: 'Motif 1, point 2' }).waitFor();
    expect(await violations(page)).toEqual([]);
  });
}
