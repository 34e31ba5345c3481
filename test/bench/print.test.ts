import { expect, test } from 'vitest';
import { paperNamed } from '#base/units/paper.ts';
import { sheetToTry } from '#jobs/calibrate/calibrate.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { typeface } from '../paper/support/fonts.ts';
import { downloaded } from '../support/bench/downloads.ts';
import { goTo, openFile, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('after one visit the test sheet is made without a network, and is the very one that the command makes', async () => {
  const { page, context, complaints, strangers } = await bench.visit();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
  await context.setOffline(true);
  await page.reload();
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Make');
  await page.getByText('Choose the paper first').waitFor();
  await page.getByText('Letter').click();
  const sheet = await downloaded(page, () =>
    page.getByRole('button', { name: 'Make the test sheet for Letter' }).click(),
  );
  expect(sheet.name).toBe('test-sheet.pdf');
  const sheets = sheetToTry(typeface, paperNamed('Letter')!, null);
  const expected = Buffer.from(await sheetsToPdf(sheets, typeface, 'Test sheet', null));
  expect(sheet.bytes.equals(expected)).toBe(true);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});
