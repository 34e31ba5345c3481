import { readdirSync, readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { drawIcon, icons } from '../../scripts/icons.mjs';
import { openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();
const pixels = (png: Buffer) => sharp(png).ensureAlpha().raw().toBuffer({ resolveWithObject: true });

describe('the icon', () => {
  const { icons: listed } = JSON.parse(readFileSync('src/bench/public/manifest.webmanifest', 'utf8')) as {
    icons: { src: string; sizes: string }[];
  };

  test.each(icons)('$file is the drawing at $size pixels', async (icon) => {
    const kept = await pixels(readFileSync(`src/bench/public/${icon.file}`));
    const drawn = await pixels(await drawIcon(icon));
    expect([kept.info.width, kept.info.height]).toEqual([icon.size, icon.size]);
    let furthest = 0;
    for (const [index, value] of kept.data.entries()) {
      furthest = Math.max(furthest, Math.abs(value - drawn.data[index]!));
    }
    expect(furthest).toBeLessThanOrEqual(8);
  });

  test('is found at every address and size that the manifest gives', async () => {
    for (const { src, sizes } of listed) {
      const answer = await fetch(new URL(src, bench.address()));
      expect(answer.status).toBe(200);
      if (sizes === 'any') continue;
      const { width, height } = await sharp(Buffer.from(await answer.arrayBuffer())).metadata();
      expect(`${width}x${height}`).toBe(sizes);
    }
    expect(listed.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(['192x192', '512x512']));
  });
});

test("the browser's offer to install is kept, shown as a button, and gone once it was taken", async () => {
  const { page, complaints } = await bench.visit();
  await page.getByText('The shelf is empty').waitFor();
  const button = page.getByRole('button', { name: 'Put Pinlight on this device' });
  expect(await button.count()).toBe(0);
  const offer = () =>
    page.evaluate(() => {
      const event = new Event('beforeinstallprompt', { cancelable: true });
      Object.assign(event, {
        prompt: async () => {
          document.documentElement.dataset.prompted = 'yes';
        },
      });
      dispatchEvent(event);
      return event.defaultPrevented;
    });
  expect(await offer()).toBe(true);
  await button.click();
  await button.waitFor({ state: 'detached' });
  expect(await page.evaluate(() => document.documentElement.dataset.prompted)).toBe('yes');
  await offer();
  await button.waitFor();
  await page.evaluate(() => dispatchEvent(new Event('appinstalled')));
  await button.waitFor({ state: 'detached' });
  expect(complaints).toEqual([]);
});

test('on a tablet whose browser makes no offer, the way is told in words', async () => {
  const context = await bench.browser().newContext();
  await context.addInitScript(() => Object.defineProperty(navigator, 'standalone', { value: false }));
  const page = await context.newPage();
  await page.goto(bench.address());
  await page.getByRole('button', { name: 'Put Pinlight on this device' }).click();
  await page.getByText('Add to Home Screen').waitFor();
});

test('the page is set in its own letters, without a network too, from the files that sheets are printed with', async () => {
  const { page, context, complaints, strangers } = await bench.visit();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
  await context.setOffline(true);
  await page.reload();
  await openFile(page, 'examples/rosehip-edging.json');
  const faces = await page.evaluate(async () => {
    await document.fonts.load('600 16px "Source Sans 3"');
    await document.fonts.load('400 16px "Source Sans 3"');
    return [...document.fonts].map(({ family, weight, status }) =>
      `${family} ${weight} ${status}`.replaceAll('"', ''),
    );
  });
  expect(faces.sort()).toEqual(['Source Sans 3 400 loaded', 'Source Sans 3 600 700 loaded']);
  const shipped = readdirSync('dist/bench/assets').filter((file) => file.startsWith('SourceSans3'));
  expect(shipped).toHaveLength(2);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});
