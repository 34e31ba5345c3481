import type { Page } from 'playwright-core';
import { test } from 'vitest';
import { expectDocsPicture } from '../support/bench/docs-picture.ts';
import { goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

const screens = {
  desk: { viewport: { width: 1280, height: 800 } },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true },
} as const;

/** What each stage shows of a pattern drafted, traced or meant, once it has come to rest. */
const stages: readonly (readonly [stage: string, file: string, ready: (page: Page) => Promise<unknown>])[] = [
  ['Draft', 'examples/drafted/compass.json', rest],
  ['Pins', 'examples/rosehip-edging.json', rest],
  ['Straighten', 'examples/rosehip-edging.json', rest],
  ['Mark', 'examples/rosehip-edging.json', rest],
  ['Size', 'examples/rosehip-edging.json', rest],
  ['Look over', 'examples/rosehip-edging.json', rest],
  ['Make', 'examples/rosehip-edging.json', rest],
  ['Prick', 'examples/rosehip-edging.json', rest],
  ['Light', 'examples/rosehip-edging.json', rest],
];

for (const [screen, options] of Object.entries(screens)) {
  test(`the stages look as in the docs, ${screen}`, async () => {
    const { page } = await bench.visit(options);
    for (const [stage, file, ready] of stages) {
      await openFile(page, file);
      if (!(await page.getByRole('link', { name: stage, exact: true }).count())) {
        await page.getByRole('link', { name: 'Shelf' }).click();
        continue;
      }
      await goTo(page, stage);
      await ready(page);
      await expectDocsPicture(page, `${stage.toLowerCase().replace(' ', '-')}-${screen}`);
      await page.getByRole('link', { name: 'Shelf' }).click();
    }
    await rest(page);
    await expectDocsPicture(page, `shelf-${screen}`);
  });
}

async function rest(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
  await page.waitForTimeout(1500);
}
