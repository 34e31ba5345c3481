import { expect, test } from 'vitest';
import { pictureTroubleInWords } from '#jobs/words/picture.ts';
import { giveFile, goTo, openFile, useBench } from '../support/bench/index.ts';
import { beginFromPaper } from '../support/bench/pages.ts';

const bench = useBench();
const SCAN = 'examples/rosehip-edging.jpg';

test('over a connection that is not secure, as from a computer at home, patterns are made and kept', async () => {
  const { page, context, complaints } = await bench.visit();
  await context.addInitScript(() => {
    for (const name of ['locks', 'storage', 'wakeLock', 'serviceWorker'])
      delete (Navigator.prototype as never)[name];
    delete (Crypto.prototype as { randomUUID?: unknown }).randomUUID;
    delete (Crypto.prototype as { subtle?: unknown }).subtle;
  });
  await page.reload();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Straighten');
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  await page.getByRole('button', { name: '1', exact: true }).click();
  await page.getByRole('button', { name: 'Remove this pin' }).click();
  await page.getByText('560 pins.').waitFor();
  await page.getByText('saved in this browser').waitFor();
  await page.reload();
  await page.getByText('560 pins.').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('561 pins.').waitFor();
  await goTo(page, 'Prick');
  await page.getByRole('button', { name: 'Begin pricking' }).click();
  await page.getByText(/^Step 1 of/).waitFor();
  expect(complaints).toEqual([]);
});

test('a browser that gives made-up dots in place of a picture’s own is told so, and one that adds a little noise is read', async () => {
  for (const noise of ['none of it', 'a little']) {
    const { page, context } = await bench.visit({ serviceWorkers: 'block' });
    await context.route(/\/assets\/worker-[^/]*\.js$/, async (route) => {
      const file = await route.fetch();
      const untrue = `{ const { prototype } = OffscreenCanvasRenderingContext2D; const { getImageData } = prototype;
        prototype.getImageData = function (...where) {
          const image = getImageData.apply(this, where);
          for (let at = 0; at < image.data.length; at++) image.data[at] = ${
            noise === 'a little' ? 'image.data[at] ^ (at * 7919 >> 3 & 1)' : '(at * 7919) % 251'
          };
          return image;
        };
      }`;
      await route.fulfill({ response: file, body: `${await file.text()}\n${untrue}` });
    });
    if (noise === 'a little') {
      await beginFromPaper(page, SCAN);
      await page.getByRole('button', { name: 'Find the pins' }).click();
      await page.getByText('556 pins found.').waitFor();
    } else {
      await giveFile(page, 'From paper', SCAN);
      await page.getByText(pictureTroubleInWords({ kind: 'pixels-withheld' })).waitFor();
    }
  }
});

test('no page is longer than its window where there is room for it: scroll bars stand for something', async () => {
  const { page } = await bench.visit();
  const overhang = () =>
    page.evaluate(() => document.documentElement.scrollHeight - document.documentElement.clientHeight);
  await page.getByText('The shelf is empty').waitFor();
  expect(await overhang()).toBe(0);
  await openFile(page, 'examples/rosehip-edging.json');
  for (const stage of ['Pins', 'Make', 'Prick']) {
    await goTo(page, stage);
    expect(await overhang(), stage).toBe(0);
  }
});
