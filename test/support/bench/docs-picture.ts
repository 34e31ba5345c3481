import { existsSync, mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { expect } from 'vitest';

/** The pictures are made anew, not compared, where this is set: `npm run pictures` does so. */
const renewed = process.env.PICTURES === 'renew';

/** Pictures are compared this many pixels wide, so that another version of the browser may draw letters its own way. */
const WIDTH = 160;
/** Mean difference of the levels (0 to 255) above which a picture shows another screen. */
const MOST_DIFFERENT = 4;

/** The screen as it is, against the picture of it in `docs/images/bench/`, which must not go stale. */
export async function expectDocsPicture(page: Page, name: string): Promise<void> {
  const file = fileURLToPath(new URL(`../../../docs/images/bench/${name}.png`, import.meta.url));
  const shot = await page.screenshot({ animations: 'disabled', caret: 'hide' });
  if (renewed) {
    mkdirSync(dirname(file), { recursive: true });
    await sharp(shot).png({ palette: true, colours: 96 }).toFile(file);
    return;
  }
  expect(existsSync(file), `docs/images/bench/${name}.png is missing: npm run pictures makes it`).toBe(true);
  const [kept, seen] = await Promise.all([small(file), small(shot)]);
  expect(seen.length, `${name}.png has another shape: npm run pictures makes it anew`).toBe(kept.length);
  const difference = kept.reduce((sum, level, at) => sum + Math.abs(level - seen[at]!), 0) / kept.length;
  expect(difference, `${name}.png is stale: npm run pictures makes it anew`).toBeLessThan(MOST_DIFFERENT);
}

const small = (picture: string | Buffer): Promise<Buffer> =>
  sharp(picture).flatten().toColourspace('b-w').resize(WIDTH).raw().toBuffer();
