import { expect, test } from 'vitest';
import { clearsWeekly } from '../../src/bench/store/clears-weekly.ts';
import { violations } from '../support/bench/access.ts';
import { downloaded, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

const TABLET =
  'Mozilla/5.0 (iPad; CPU OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1';
const DESK =
  'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Safari/605.1.15';
const TABLET_OTHER =
  'Mozilla/5.0 (iPad; CPU OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) CriOS/126.0 Mobile/15E148 Safari/604.1';
const OTHERS = [
  'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Safari/537.36',
  'Mozilla/5.0 (Linux; Android 14) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/126.0.0.0 Mobile Safari/537.36',
  'Mozilla/5.0 (X11; Linux x86_64; rv:127.0) Gecko/20100101 Firefox/127.0',
];

test('browsers that clear away what was not used for a week are told from the others', () => {
  for (const name of [TABLET, DESK, TABLET_OTHER]) {
    expect(clearsWeekly(name, false)).toBe(true);
    expect(clearsWeekly(name, true)).toBe(false);
  }
  for (const name of OTHERS) expect(clearsWeekly(name, false)).toBe(false);
});

/** A page whose browser refuses, or grants, the promise to keep everything. */
async function visit(userAgent: string | null, grants = false, colorScheme: 'light' | 'dark' = 'light') {
  const visited = await bench.visit({ colorScheme, ...(userAgent && { userAgent }) });
  await visited.context.addInitScript((grants) => {
    navigator.storage.persist = async () => grants;
    navigator.storage.persisted = async () => grants;
  }, grants);
  await visited.page.reload();
  return visited;
}

const WEEK = 'This browser may throw your patterns away if Pinlight is not used for seven days.';

test.each(['light', 'dark'] as const)(
  'after any change the shelf of such a browser says what helps, until there is a backup, in the %s look',
  async (look) => {
    const { page, complaints } = await visit(TABLET, false, look);
    await openFile(page, 'examples/rosehip-edging.json');
    await page.getByRole('link', { name: 'Shelf' }).click();
    await page.getByText(WEEK).waitFor();
    await page.getByText(/“Add to Home Screen” or “Add to Dock”/).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Understood' }).click();
    await page.getByText(WEEK).waitFor({ state: 'detached' });

    await page.getByRole('button', { name: /pins$/ }).click();
    await page.getByText('adds a pin').click();
    await page.locator('canvas.sheet').click({ position: { x: 40, y: 40 } });
    await page.getByText('saved in this browser').waitFor();
    await page.getByRole('link', { name: 'Shelf' }).click();
    await page.getByText(WEEK).waitFor();
    await downloaded(page, () => page.getByRole('button', { name: 'Back up everything' }).click());
    await page.getByText(WEEK).waitFor({ state: 'detached' });
    await page.getByText('Last backup: today').waitFor();
    expect(complaints).toEqual([]);
  },
);

test('Settings say the same, and that the browser was asked in vain', async () => {
  const { page, complaints } = await visit(DESK);
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByText(WEEK).waitFor();
  await page.getByRole('button', { name: 'Ask the browser to keep them' }).click();
  await page.getByText('It was asked, and gave no promise.').waitFor();
  await page.getByText(WEEK).waitFor();
  expect(complaints).toEqual([]);
});

test.each([
  ['a browser of another kind that refused', null, false],
  ['such a browser that promised', TABLET, true],
])('%s is not said to clear everything away in a week', async (_name, userAgent, grants) => {
  const { page } = await visit(userAgent, grants);
  await openFile(page, 'examples/rosehip-edging.json');
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.getByText('Last backup: none was made in this browser yet.').waitFor();
  expect(await page.getByText(WEEK).count()).toBe(0);
  await page.getByRole('link', { name: 'Settings' }).click();
  await page.getByText(grants ? 'has promised to keep' : 'has not promised to keep').waitFor();
});
