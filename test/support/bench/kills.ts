import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { type Random, seededRandom } from '#base/random.ts';
import { EditedPattern } from './edited-pattern.ts';
import { jsonFile } from './files.ts';
import { type KillableBrowser, startKillable } from './killed-browser.ts';
import { openFile } from './pages.ts';

/** What came of killing a browser again and again while somebody worked in it. */
export interface KillReport {
  readonly kills: number;
  readonly edits: number;
  /** Edits that the page had shown as saved, and that were gone. */
  readonly savedLost: number;
  /** Edits made more than two seconds before the kill, and gone. */
  readonly oldLost: number;
  /** Edits of the last moment that were gone, none of them shown as saved. */
  readonly unsavedLost: number;
  /** Times at which the pattern was none of those that it had ever been. */
  readonly broken: number;
}

const OLD = 2000;

/** Edits at random through the page, kills the browser at a random moment, reopens it and looks what is there. */
export async function killAndReopen(address: string, kills: number, seed: number): Promise<KillReport> {
  const random = seededRandom(seed);
  const profile = mkdtempSync(join(tmpdir(), 'pinlight-kills-'));
  const report = { kills: 0, edits: 0, savedLost: 0, oldLost: 0, unsavedLost: 0, broken: 0 };
  let browser: KillableBrowser | null = null;
  try {
    browser = await startKillable(profile);
    const place = await begin(browser.page, address);
    const pattern = new EditedPattern(await readPins(browser.page));
    for (let round = 0; round < kills; round++) {
      const killed = await editUntilKilled(browser, pattern, random);
      browser = await startKillable(profile);
      await browser.page.goto(place);
      const found = pattern.resumeAt(await readPins(browser.page));
      report.kills++;
      report.edits += pattern.edits;
      if (found === null) {
        report.broken++;
        break;
      }
      report.savedLost += Math.max(0, pattern.shownSaved - found);
      report.oldLost += Math.max(0, pattern.lastBefore(killed - OLD) - found);
      report.unsavedLost += Math.max(0, pattern.edits - Math.max(found, pattern.shownSaved));
      pattern.begin();
    }
    return report;
  } finally {
    await browser?.kill().catch(() => {});
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function begin(page: Page, address: string): Promise<string> {
  await page.goto(address);
  await openFile(page, jsonFile('kills.json', '{"pins":[{"x":0,"y":0},{"x":80,"y":0},{"x":40,"y":50}]}'));
  return page.url().replace(/\/[^/]*$/, '/pins');
}

/** Works at random, and gives back when the browser was killed in the midst of it. */
async function editUntilKilled(
  browser: KillableBrowser,
  pattern: EditedPattern,
  random: Random,
): Promise<number> {
  const { page } = browser;
  await page.getByText('adds a pin').click();
  const sheet = (await page.locator('canvas.sheet').boundingBox())!;
  let killed = 0;
  const end = new Promise<void>((resolve) => {
    setTimeout(
      () => {
        killed = Date.now();
        resolve(browser.kill());
      },
      400 + random() * 3600,
    );
  });
  try {
    while (!killed) {
      const edit = pattern.choose(random());
      const at = { x: (0.1 + 0.8 * random()) * sheet.width, y: (0.1 + 0.7 * random()) * sheet.height };
      pattern.attempt(edit);
      if (edit === 'add') await page.mouse.click(sheet.x + at.x, sheet.y + at.y);
      else await page.getByRole('button', { name: BUTTONS[edit], exact: true }).click({ timeout: 5000 });
      pattern.made(await seen(page, pattern.countAfter(edit)), Date.now());
      if (await isSaved(page)) pattern.saved();
    }
  } catch (error) {
    // The browser went away in the midst of an edit; anything else is a fault.
    if (!killed) throw error;
  }
  await end;
  return killed;
}

const BUTTONS = { undo: 'Undo', redo: 'Redo', remove: 'Remove this pin' } as const;

/** Waits until the page shows so many pins, and gives the place of the chosen one as it stands in its fields. */
async function seen(page: Page, count: number): Promise<string> {
  await page.getByText(new RegExp(`^${count} pins\\.`)).waitFor({ timeout: 5000 });
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLInputElement>('[aria-label="The chosen pin"] input')]
      .slice(0, 2)
      .map(({ value }) => value)
      .join(' '),
  );
}

const isSaved = (page: Page): Promise<boolean> =>
  page.evaluate(() => document.querySelector('.saved')?.textContent === 'saved in this browser');

/** The places of all pins, as the table gives them. */
async function readPins(page: Page): Promise<string[]> {
  await page.getByRole('link', { name: 'Pins', exact: true }).click();
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  const pins: string[] = [];
  for (;;) {
    await page.locator('.table tbody tr').first().waitFor();
    pins.push(
      ...(await page.evaluate(() =>
        [...document.querySelectorAll('.table tbody tr')].map((row) =>
          [...row.querySelectorAll('td')]
            .slice(0, 2)
            .map(({ textContent }) => textContent)
            .join(' '),
        ),
      )),
    );
    const next = page.getByRole('button', { name: 'After', exact: true });
    if (await next.isDisabled()) return pins;
    const before = await page.locator('.table caption').textContent();
    await next.click();
    await page.waitForFunction(
      (old) => document.querySelector('.table caption')?.textContent !== old,
      before,
    );
  }
}
