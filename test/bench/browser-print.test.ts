import { expect, test } from 'vitest';
import { openFile, useBench } from '../support/bench/index.ts';
import { readPdf } from '../support/bench/pdf.ts';

const bench = useBench();

test("the browser's own print says to make the PDF, on one page, and never prints the pattern", async () => {
  const { page } = await bench.visit();
  await openFile(page, 'examples/rosehip-edging.json');
  const { pages } = await readPdf(await page.pdf({ format: 'A4' }));
  expect(pages.length).toBe(1);
  expect(pages[0]!.text).toContain('Make the PDF');
  expect(pages[0]!.text).not.toContain('Rosehip');
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('canvas.sheet').isVisible()).toBe(false);
  await page.emulateMedia({ media: 'screen' });
  expect(await page.getByText('This page is not printed').isVisible()).toBe(false);
});
