import type { Page } from 'playwright-core';
import { test } from 'vitest';
import { expectDocsPicture } from '../support/bench/docs-picture.ts';
import { choose, goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

const screens = {
  desk: { viewport: { width: 1280, height: 800 } },
  tablet: { viewport: { width: 820, height: 1180 }, hasTouch: true },
};

for (const [screen, options] of Object.entries(screens)) {
  test(`every stage looks as in its picture in the docs, at the ${screen}`, async () => {
    const { page } = await bench.visit({ ...options, locale: 'en-GB' });
    const picture = async (name: string) => {
      await atRest(page);
      await expectDocsPicture(page, `${name}-${screen}`);
    };
    const press = (name: string | RegExp) => page.getByRole('button', { name }).click();
    const toShelf = () => page.getByRole('link', { name: 'Shelf' }).click();

    await openFile(page, 'examples/drafted/sea-rose.json');
    await toShelf();
    await openFile(page, 'examples/drafted/compass.json');
    await goTo(page, 'Draft');
    await picture('draft');
    await toShelf();

    await openFile(page, 'examples/rosehip-edging.jpg');
    await picture('paper');
    await press('Find the pins');
    await page.getByText(/pins? in doubt:/).waitFor();
    await goTo(page, 'Pins');
    await press(/^Go through/);
    await picture('pins');
    await goTo(page, 'Straighten');
    await page.getByRole('heading', { name: 'What was found' }).waitFor();
    await press('Whole sheet');
    await picture('straighten');
    await goTo(page, 'Look over');
    await page
      .getByText(/^(Fault|Warning)/)
      .first()
      .waitFor();
    await picture('look-over');
    await toShelf();

    await openFile(page, 'examples/rosehip-edging.json');
    await goTo(page, 'Mark');
    await choose(page, 'tints an area');
    await picture('mark');
    await goTo(page, 'Size');
    await picture('size');
    await goTo(page, 'Make');
    await choose(page, 'A4');
    await page.getByText(/^The pins reach/).waitFor();
    await picture('make');
    await goTo(page, 'Prick');
    await press('Begin pricking');
    await page.getByText(/^Step 1 of/).waitFor();
    await picture('prick');
    await goTo(page, 'Light');
    const photo = page.waitForEvent('filechooser');
    await press('Choose a photo');
    await (await photo).setFiles('examples/rosehip-card.jpg');
    await page.getByText(/^Held to the light/).waitFor();
    await picture('light');
    await toShelf();
    await picture('shelf');
  }, 180_000);
}

/** Waits until nothing is under way, and the sheet has come to where it was going. */
async function atRest(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' });
  await page.waitForTimeout(1000);
}
