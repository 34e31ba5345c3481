import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { expect } from 'vitest';

/** The pictures are made anew, not compared, where this is set: `npm run pictures` does so. */
const renewed = process.env.PICTURES === 'renew';

const folder = fileURLToPath(new URL('../../../docs/images/bench/', import.meta.url));
/** Says which browser the pictures were made with. */
const madeWith = `${folder}made-with.txt`;

/** Pictures are compared this many pixels wide. */
const WIDTH = 160;
/**
 * Mean difference of the levels (0 to 255) above which a picture is stale. The same browser draws a screen again within
 * 0.1. Another version may break a line of words elsewhere, and so move all that stands below it.
 */
const MOST_DIFFERENT = { sameBrowser: 0.7, otherBrowser: 7 };

/** The screen as it is, against the picture of it in `docs/images/bench/`, which must not go stale. */
export async function expectDocsPicture(page: Page, name: string): Promise<void> {
  const browser = `Chromium ${page.context().browser()!.version()}\n`;
  const file = `${folder}${name}.png`;
  const shot = await page.screenshot({ animations: 'disabled', caret: 'hide' });
  if (renewed) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(madeWith, browser);
    await sharp(shot).png({ palette: true, colours: 96 }).toFile(file);
    return;
  }
  const what = `docs/images/bench/${name}.png, which npm run pictures makes anew,`;
  expect(existsSync(file), `${what} is there`).toBe(true);
  const [kept, seen] = await Promise.all([small(file), small(shot)]);
  expect(seen.length, `${what} has the shape of the screen`).toBe(kept.length);
  const difference = kept.reduce((sum, level, at) => sum + Math.abs(level - seen[at]!), 0) / kept.length;
  const isSame = readFileSync(madeWith, 'utf8') === browser;
  expect(difference, `${what} shows the screen as it is`).toBeLessThan(
    isSame ? MOST_DIFFERENT.sameBrowser : MOST_DIFFERENT.otherBrowser,
  );
}

const small = (picture: string | Buffer): Promise<Buffer> =>
  sharp(picture).flatten().toColourspace('b-w').resize(WIDTH).raw().toBuffer();
