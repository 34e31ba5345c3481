import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { draftRecipe } from '#jobs/draft/draft.ts';
import { libraryRecipe } from '#jobs/draft/source.ts';
import { openToWork } from '#jobs/open.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { useBench } from '../support/bench/index.ts';

const bench = useBench();

/** Chooses a recipe of the library, and waits until its figures are there. */
async function fromRecipe(page: Page, title: RegExp): Promise<void> {
  await page.getByRole('link', { name: 'From a recipe' }).click();
  await page.getByRole('button', { name: title }).click();
  await page.getByRole('heading', { level: 2, name: 'Draft' }).waitFor();
  await page.getByText('Change a figure').waitFor();
}

/** The open pattern, as the file that is saved of it holds it. */
async function savedPattern(page: Page): Promise<Pattern> {
  await page.evaluate(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  const opened = openToWork(new Uint8Array(await readFile(await (await download).path())));
  if (!opened.ok) throw new Error(opened.trouble.kind);
  return opened.value.pattern;
}

/** What the command drafts of a recipe of the library with figures set. */
function commanded(name: string, sets: Record<string, string>): Pattern {
  const job = draftRecipe(
    libraryRecipe(name)!,
    Object.entries(sets).map(([path, text]) => ({ path, text })),
  );
  if (!job.ok) throw new Error(job.trouble.kind);
  return job.value.file.pattern;
}

function expectSamePins(one: Pattern, other: Pattern): void {
  expect(one.pins.map(({ id }) => id)).toEqual(other.pins.map(({ id }) => id));
  for (const [at, { x, y }] of one.pins.entries()) {
    // A file carries 0.001 mm.
    expect(x).toBeCloseTo(Number(other.pins[at]!.x.toFixed(3)), 9);
    expect(y).toBeCloseTo(Number(other.pins[at]!.y.toFixed(3)), 9);
  }
}

async function violations(page: Page): Promise<string[]> {
  const found = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  return found.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}

test('a recipe of the library is chosen, a figure changed and kept: the command drafts the same', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await fromRecipe(page, /^Plain strip/);
  expectSamePins(await savedPattern(page), commanded('plain-strip', {}));

  await page.getByLabel('Spacing of the pins', { exact: true }).fill('4.5 mm');
  await page.getByLabel('Number of repeats', { exact: true }).fill('8');
  await page.getByText(/^Drafted .*: 293 pins/).waitFor();
  // What is only tried is not in the pattern.
  expectSamePins(await savedPattern(page), commanded('plain-strip', {}));

  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByRole('button', { name: 'Leave it' }).waitFor({ state: 'detached' });
  expectSamePins(await savedPattern(page), commanded('plain-strip', { spacing: '4.5mm', repeats: '8' }));

  await page.getByRole('button', { name: 'Undo' }).click();
  expectSamePins(await savedPattern(page), commanded('plain-strip', {}));
  await expect.poll(() => page.getByLabel('Number of repeats', { exact: true }).inputValue()).toBe('6');
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of the recipes and the drafting, in the ${look} look`, async () => {
    const { page } = await bench.visit({ colorScheme: look });
    await page.getByRole('link', { name: 'From a recipe' }).click();
    await page.getByRole('button', { name: /^Harbour heart/ }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: /^Breakwater/ }).click();
    await page.getByText('Change a figure').waitFor();
    await page.getByText('Headside', { exact: true }).click();
    await page.getByRole('button', { name: 'Spacing of the pins: more' }).click();
    await page.getByRole('button', { name: 'Keep', exact: true }).waitFor();
    expect(await violations(page)).toEqual([]);
  });
}

test('what cannot be drafted is refused in words, and nothing changes', async () => {
  const { page, complaints } = await bench.visit();
  await fromRecipe(page, /^Capstan fan/);
  await page.getByText('Headside', { exact: true }).click();
  await page.getByLabel('Pins', { exact: true }).fill('400');
  const tried = page.getByRole('region', { name: 'What you are trying' });
  await tried
    .getByRole('alert')
    .getByText(/“Headside, pins” cannot be 400/)
    .waitFor();
  expect(await tried.getByRole('button', { name: 'Keep' }).isDisabled()).toBe(true);
  await tried.getByRole('button', { name: 'Leave it' }).click();
  await tried.waitFor({ state: 'detached' });
  expectSamePins(await savedPattern(page), commanded('capstan-fan', {}));
  expect(complaints).toEqual([]);
});
