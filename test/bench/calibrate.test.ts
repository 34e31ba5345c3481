import { readFileSync, writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { printerProfileSchema } from '#paper/calibrate/profile.ts';
import { violations } from '../support/bench/access.ts';
import {
  choose,
  downloaded,
  everyTapCounts,
  giveFile,
  goTo,
  jsonFile,
  openFile,
  useBench,
} from '../support/bench/index.ts';
import { pinlight, useCommand } from '../support/cli.ts';

const bench = useBench();
const { at } = useCommand();
const example = 'examples/rosehip-edging.json';

async function toPrinter(options?: Parameters<typeof bench.visit>[0]) {
  const visit = await bench.visit(options);
  await everyTapCounts(visit.page);
  await openFile(visit.page, example);
  await goTo(visit.page, 'Make');
  await choose(visit.page, 'a printer that prints true');
  await choose(visit.page, 'A4');
  return visit;
}

async function type(page: Page, label: string, words: string): Promise<void> {
  await page.getByLabel(label).focus();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(words);
  await page.keyboard.press('Enter');
}

test('a printer is measured, kept, proved, chosen when printing, saved, removed and opened again', async () => {
  const { page, complaints, strangers } = await toPrinter();
  const sheet = await downloaded(page, () =>
    page.getByRole('button', { name: 'Make the sheet for A4' }).click(),
  );
  await pinlight(['calibrate', '--sheet', at('sheet.pdf'), '--paper', 'A4']);
  expect(sheet.bytes.equals(readFileSync(at('sheet.pdf')))).toBe(true);

  await type(page, 'A, the line across', '164,1');
  await type(page, 'B, the line down', '230');
  await page.getByRole('button', { name: 'Keep this printer' }).click();
  await page.getByText(/96\.5 %.*"actual size"/).waitFor();
  await page.getByText('None yet.').waitFor();

  await type(page, 'A, the line across', '170,2');
  await type(page, 'B, the line down', '9 1/16 in');
  await type(page, 'The widest gap that has closed', '0.1');
  await type(page, 'What you call it', 'Kitchen printer');
  await page.getByRole('button', { name: 'Keep this printer' }).click();
  await page.getByText(/This printer is put right by 0\.99882 across/).waitFor();
  const kept = page.getByRole('region', { name: 'Kitchen printer' });
  await kept.getByText('not yet proved').waitFor();

  const saved = await downloaded(page, () =>
    page.getByRole('button', { name: 'Save Kitchen printer as a file' }).click(),
  );
  expect(saved.name).toBe('Kitchen printer.json');
  const profile = printerProfileSchema.parse(JSON.parse(saved.bytes.toString()));
  expect(profile.x).toBeCloseTo(170 / 170.2, 9);
  expect(profile.y).toBeCloseTo(230 / (9.0625 * 25.4), 9);
  expect(profile).toMatchObject({ verified: false, inkSpread: 0.1, paper: 'A4', use: 'print' });
  writeFileSync(at('kitchen.json'), saved.bytes);

  await kept.getByRole('button', { name: 'Prove Kitchen printer' }).click();
  await type(page, 'Now across', '171');
  await type(page, 'Now down', '230');
  await page.getByRole('button', { name: 'Is it true now?' }).click();
  await page.getByText('is not proved').waitFor();
  await type(page, 'Now across', '170.1');
  await page.getByRole('button', { name: 'Is it true now?' }).click();
  await page.getByText('is proved: both lines').waitFor();
  await page.reload();
  await choose(page, 'a printer that prints true');
  await kept.getByText(/: proved/).waitFor();

  await choose(page, 'sheets to print');
  await choose(page, 'Kitchen printer');
  const made = await downloaded(page, () =>
    page.getByRole('button', { name: 'Make the PDF for A4' }).click(),
  );
  const print = ['print', example, '--way', 'through', '--paper', 'A4', '-o', at('true.pdf')];
  await pinlight([...print, '--printer', at('kitchen.json')]);
  expect(made.bytes.equals(readFileSync(at('true.pdf')))).toBe(true);

  await choose(page, 'a printer that prints true');
  await page.getByRole('button', { name: 'Remove Kitchen printer' }).click();
  await page.getByRole('button', { name: 'No, keep it' }).click();
  await page.getByRole('button', { name: 'Remove Kitchen printer' }).click();
  await page.getByRole('button', { name: 'Yes, remove it' }).click();
  await page.getByText('None yet.').waitFor();
  await giveFile(page, 'Open the file of a printer', jsonFile('x.json', {}));
  await page.getByText('This is not the file of a measured printer').waitFor();
  await giveFile(page, 'Open the file of a printer', at('kitchen.json'));
  await kept.getByText('not yet proved').waitFor();
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('a damaged list of printers in the store is not taken, and the bench goes on', async () => {
  const { page } = await toPrinter();
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const open = indexedDB.open('pinlight');
        open.onsuccess = () => {
          const write = open.result.transaction('settings', 'readwrite');
          write.objectStore('settings').put([{ name: 'false', x: 7 }], 'printers');
          write.oncomplete = () => {
            open.result.close();
            resolve();
          };
        };
      }),
  );
  await page.reload();
  await choose(page, 'a printer that prints true');
  await page.getByText('None yet.').waitFor();
  await choose(page, 'sheets to print');
  await page.getByText(/^The pins reach/).waitFor();
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of measuring a printer, in the ${look} look`, async () => {
    const { page } = await toPrinter({ colorScheme: look });
    await type(page, 'A, the line across', '170.1');
    await type(page, 'B, the line down', '230.1');
    await page.getByRole('button', { name: 'Keep this printer' }).click();
    await page.getByRole('button', { name: 'Prove My printer' }).click();
    await page.getByRole('button', { name: 'Remove My printer' }).click();
    expect(await violations(page)).toEqual([]);
  });
}
