import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { paperNamed } from '#base/units/paper.ts';
import { sheetToTry } from '#jobs/calibrate/calibrate.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { typeface } from '../paper/support/fonts.ts';
import { violations } from '../support/bench/access.ts';
import {
  choose,
  downloaded,
  everyTapCounts,
  goTo,
  jsonFile,
  openFile,
  useBench,
} from '../support/bench/index.ts';
import { readPdf } from '../support/bench/pdf.ts';
import { pinlight, useCommand } from '../support/cli.ts';

const bench = useBench();
const { at } = useCommand();
const example = 'examples/rosehip-edging.json';
const { pins } = JSON.parse(readFileSync(example, 'utf8')) as { pins: { x: number; y: number }[] };

const makePdf = (page: Page, paper: string) =>
  downloaded(page, () => page.getByRole('button', { name: `Make the PDF for ${paper}` }).click());

async function toMake(page: Page, paper: string): Promise<void> {
  await goTo(page, 'Make');
  await page.getByText('Choose the paper first').waitFor();
  await choose(page, paper);
  await page.getByText(/^The pins reach/).waitFor();
}

test('after one visit sheets are made without a network, byte for byte those of the command', async () => {
  const { page, context, complaints, strangers } = await bench.visit();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => null));
  await context.setOffline(true);
  await page.reload();
  await openFile(page, example);
  await toMake(page, 'Letter');

  const trial = await downloaded(page, () =>
    page.getByRole('button', { name: 'Make the test sheet for Letter' }).click(),
  );
  expect(trial.name).toBe('test-sheet-Letter.pdf');
  const sheets = sheetToTry(typeface, paperNamed('Letter')!, null);
  const expected = await sheetsToPdf(sheets, typeface, 'Test sheet', null);
  expect(trial.bytes.equals(Buffer.from(expected))).toBe(true);

  const made = await makePdf(page, 'Letter');
  expect(made.name).toBe('Rosehip edging-through-Letter.pdf');
  const run = await pinlight([
    'print',
    example,
    '--way',
    'through',
    '--paper',
    'Letter',
    '-o',
    at('command.pdf'),
  ]);
  expect(run.code, run.err).toBe(0);
  expect(made.bytes.equals(readFileSync(at('command.pdf')))).toBe(true);
  await page.getByText(/sheets\. Print at 100 % \("actual size"\)/).waitFor();
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('the PDF has exactly the paper, asks not to be scaled, and holds every hole within 0.001 mm', async () => {
  const { page } = await bench.visit();
  await openFile(page, example);
  await toMake(page, 'A4');
  await choose(page, 'under film');
  await choose(page, 'grey');
  const pdf = await readPdf((await makePdf(page, 'A4')).bytes);
  expect(pdf.scaling).toBe('None');
  expect(pdf.attachments).toEqual(['pattern.json']);
  for (const { width, height } of pdf.pages) {
    expect(width).toBeCloseTo(210, 3);
    expect(height).toBeCloseTo(297, 3);
  }
  const { dots, text } = pdf.pages[0]!;
  expect(text).toContain('Complete sheet for under film');
  const holes = dots.slice(0, pins.length);
  expect(holes.length).toBe(pins.length);
  const moved = { x: holes[0]!.x - pins[0]!.x, y: holes[0]!.y - pins[0]!.y };
  for (const [k, { x, y }] of pins.entries()) {
    expect(Math.abs(holes[k]!.x - x - moved.x)).toBeLessThan(0.001);
    expect(Math.abs(holes[k]!.y - y - moved.y)).toBeLessThan(0.001);
  }
});

test('a large pattern is shown on its sheets, blank ones are told, and some can be made alone', async () => {
  const { page, complaints } = await bench.visit();
  await everyTapCounts(page);
  const corners = [0, 500].flatMap((x) => [0, 700].map((y) => ({ x, y })));
  await openFile(page, jsonFile('large.json', { pins: corners }));
  await toMake(page, 'A4');
  await page.getByText(/^The pattern takes \d+ sheets of A4/).waitFor();
  await page.getByText(/^Blank, skip: /).waitFor();
  await page.getByRole('button', { name: 'The sheets one by one' }).click();
  const listed = page.locator('.fold-inside .places');
  expect(await listed.getByText('blank, skip').count()).toBeGreaterThan(0);
  await listed.getByRole('button', { name: 'A1 1 hole' }).click();

  await page.getByRole('button', { name: /^Hole marks/ }).click();
  const only = page.getByLabel('Only these sheets');
  await only.fill('Z9');
  await only.press('Enter');
  await page.getByRole('button', { name: 'Make the PDF for A4' }).click();
  await page.getByText('There is no sheet').waitFor();
  await only.fill('A1');
  await only.press('Enter');
  const { pages } = await readPdf((await makePdf(page, 'A4')).bytes);
  expect(pages.filter(({ text }) => text.includes('sheet A1')).length).toBeGreaterThan(0);
  expect(pages.some(({ text }) => text.includes('sheet A2,'))).toBe(false);
  expect(complaints).toEqual([]);
});

test('the paper is asked once; the ruler tells what was wrong; all by keyboard alone', async () => {
  const { page, complaints } = await bench.visit();
  await openFile(page, example);
  await goTo(page, 'Make');
  await page.getByRole('radio', { name: /^A4/ }).focus();
  await page.keyboard.press('Space');
  await page.getByText(/^The pins reach/).waitFor();
  await page.reload();
  await page.getByText('The paper in your printer: A4').waitFor();
  const made = await downloaded(page, async () => {
    await page.getByRole('button', { name: 'Make the PDF for A4' }).focus();
    await page.keyboard.press('Enter');
  });
  expect((await readPdf(made.bytes)).pages.length).toBeGreaterThan(2);
  const across = page.getByLabel('Ruler across');
  await across.focus();
  await page.keyboard.type('94,1');
  await page.keyboard.press('Enter');
  await page.getByText(/a file for A4 was shrunk to fit Letter/).waitFor();
  await across.fill('100');
  await across.press('Enter');
  await page.getByText('The ruler across is true').waitFor();
  await page.getByLabel('Ruler down').fill('3 15/16 in');
  await page.getByLabel('Ruler down').press('Enter');
  await page.getByText('The ruler down is true').waitFor();
  expect(complaints).toEqual([]);
});

test('a pattern whose size nobody knows is refused, with the way to the stage Paper', async () => {
  const { page } = await bench.visit();
  await openFile(page, jsonFile('px.json', { unit: 'px', pins: [{ x: 10, y: 10 }] }));
  await goTo(page, 'Make');
  await choose(page, 'A4');
  await page.getByText('cannot be printed true to scale').waitFor();
  expect(await page.getByRole('link', { name: 'To the stage Paper' }).getAttribute('href')).toMatch(/paper$/);
  expect(await page.getByRole('button', { name: 'Make the PDF for A4' }).isDisabled()).toBe(true);
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of printing, in the ${look} look`, async () => {
    const { page } = await bench.visit({ colorScheme: look });
    await openFile(page, example);
    await goTo(page, 'Make');
    expect(await violations(page)).toEqual([]);
    await choose(page, 'A4');
    await page.getByText(/^The pins reach/).waitFor();
    await page.getByRole('button', { name: /^Hole marks/ }).click();
    await page.getByRole('button', { name: 'What to choose when you print' }).click();
    expect(await violations(page)).toEqual([]);
  });
}

test('the markings of the paper itself lie under dots that stand where the drawn ones do', async () => {
  expect((await pinlight(['trace', 'examples/rosehip-edging.jpg', '-o', at('traced.pinlight')])).code).toBe(
    0,
  );
  const { page, complaints } = await bench.visit();
  await openFile(page, at('traced.pinlight'));
  await toMake(page, 'A4');
  const drawn = await readPdf((await makePdf(page, 'A4')).bytes);
  await choose(page, 'as on your paper');
  await page.getByText(/^The pins reach/).waitFor();
  const made = await makePdf(page, 'A4');
  const print = ['print', at('traced.pinlight'), '--way', 'through', '--paper', 'A4', '--markings', 'paper'];
  expect((await pinlight([...print, '-o', at('paper.pdf')])).code).toBe(0);
  const [here, command] = [await readPdf(made.bytes), await readPdf(readFileSync(at('paper.pdf')))];
  expect(here.pages.map(({ dots }) => dots)).toEqual(command.pages.map(({ dots }) => dots));
  expect(here.pages.map(({ text }) => text)).toEqual(command.pages.map(({ text }) => text));
  expect(here.pages[0]!.dots.length).toBe(drawn.pages[0]!.dots.length);
  // Two decoders of JPEG may differ by a shade in places, so that the picture presses to another length; not by much.
  expect(Math.abs(made.bytes.length / readFileSync(at('paper.pdf')).length - 1)).toBeLessThan(0.02);
  expect(complaints).toEqual([]);
});
