import { readFileSync, writeFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
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
import { readPdf } from '../support/bench/pdf.ts';
import { pinlight, useCommand } from '../support/cli.ts';

const bench = useBench();

/** A visit whose every click counts: these tests click faster than a hand that means it. */
async function visit(options?: Parameters<typeof bench.visit>[0]) {
  const visited = await bench.visit(options);
  await everyTapCounts(visited.page);
  return visited;
}
const { at } = useCommand();
const example = 'examples/rosehip-edging.json';
const { pins } = JSON.parse(readFileSync(example, 'utf8')) as { pins: unknown[] };

async function toFiles(page: Page): Promise<void> {
  await goTo(page, 'Make');
  await choose(page, 'files for a machine');
}

const agree = (page: Page) => page.getByRole('button', { name: 'I have read this' }).click();

const save = (page: Page, name: RegExp) => downloaded(page, () => page.getByRole('button', { name }).click());

/** What the command writes for the same wish. */
async function commandFile(name: string, options: readonly string[] = []): Promise<Buffer> {
  const run = await pinlight(['cut', example, '-o', at(name), ...options]);
  expect(run.code, run.err).toBe(0);
  return readFileSync(at(name));
}

test('the cautions come first, once a session; the DXF is measured before it is saved, and is that of the command', async () => {
  const { page, complaints, strangers } = await visit();
  await openFile(page, example);
  await toFiles(page);
  await page.getByText('Never leave a laser unattended').waitFor();
  await page.getByText('manual, the material').waitFor();
  expect(await page.getByRole('button', { name: /^Make the/ }).count()).toBe(0);
  await agree(page);
  await page.getByRole('button', { name: 'Make the DXF file' }).click();
  const says = (await page.getByText(/should measure/).textContent())!;
  expect(says).toContain(`${pins.length} holes`);
  await page.getByText(/Does your shop or your machine.s program compensate.*“The kerf”/).waitFor();

  const made = await save(page, /^Save Rosehip edging-mm-.*\.dxf/);
  expect(made.bytes.equals(await commandFile('card.dxf'))).toBe(true);
  const parsed = new DxfParser().parseSync(made.bytes.toString('latin1'))!;
  const circles = parsed.entities.filter(({ type }) => type === 'CIRCLE') as unknown as {
    center: { x: number; y: number };
    radius: number;
  }[];
  expect(circles.length).toBe(pins.length);
  const reach = (axis: 'x' | 'y') => Math.max(...circles.map(({ center, radius }) => center[axis] + radius));
  const [, width, height] = /measure ([\d.]+) mm \(.*?\) by ([\d.]+) mm/.exec(says)!;
  expect(reach('x')).toBeCloseTo(Number(width), 1);
  expect(reach('y')).toBeCloseTo(Number(height), 1);
  const [, x, y] = /the first at ([\d.]+) mm, ([\d.]+) mm \([\d.]+ in, [\d.]+ in\)/.exec(says)!;
  expect(circles[0]!.center.x).toBeCloseTo(Number(x), 2);
  expect(circles[0]!.center.y).toBeCloseTo(Number(y), 2);

  await choose(page, 'sheets to print');
  await choose(page, 'files for a machine');
  await page.getByRole('button', { name: 'Make the DXF file' }).waitFor();
  await page.reload();
  await toFiles(page);
  await page.getByRole('button', { name: 'I have read this' }).waitFor();
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('SVG and G-code with everything asked for are byte for byte those of the command', async () => {
  const { page, complaints } = await visit();
  await openFile(page, example);
  await toFiles(page);
  await agree(page);
  await choose(page, 'SVG');
  await choose(page, 'no, it does not');
  const kerf = page.getByLabel('The kerf', { exact: true });
  await kerf.fill('0,15');
  await kerf.press('Enter');
  await page.getByText('Cut the card out as well').click();
  await page.getByLabel('Tabs that hold the card').fill('4');
  await page.getByLabel('Tabs that hold the card').press('Enter');
  await page.getByRole('button', { name: /^Engraving, targets/ }).click();
  await page.getByText('Engrave the markings').click();
  await page.getByText('A test coupon as well').click();
  await page.getByText('Unit and size in the name').click();
  await page.getByRole('button', { name: 'Make the SVG file' }).click();
  const asked = ['--kerf', '0.15', '--card', '10', '--tabs', '4', '--engrave', '--coupon'];
  const svg = await save(page, /^Save Rosehip edging\.svg/);
  expect(svg.bytes.equals(await commandFile('card.svg', asked))).toBe(true);
  const coupon = await save(page, /^Save Rosehip edging-coupon\.svg/);
  expect(coupon.bytes.equals(readFileSync(at('card-coupon.svg')))).toBe(true);

  await choose(page, 'G-code');
  await page.getByRole('button', { name: /^The bed and/ }).click();
  await choose(page, 'far apart');
  await page.getByRole('button', { name: /^What your machine/ }).click();
  await page.getByLabel('Feed, mm a minute').fill('600');
  await page.getByLabel('Feed, mm a minute').press('Enter');
  await page.getByLabel('Power while cutting, S').fill('200');
  await page.getByLabel('Power while cutting, S').press('Enter');
  await page.getByRole('button', { name: 'Make the G-code file' }).click();
  const gcode = await save(page, /^Save Rosehip edging\.gcode/);
  const machine = ['--spread', '5', '--feed', '600', '--power', '200'];
  expect(gcode.bytes.equals(await commandFile('card.gcode', [...asked, ...machine]))).toBe(true);
  expect(complaints).toEqual([]);
});

test('holes that run into each other are listed and lead to their place; a sheet to print first has the same targets', async () => {
  const { page, complaints } = await visit();
  const near = [0, 0.45, 20, 40].map((x, k) => ({ id: `pin${k}`, x, y: 5 * k }));
  near[1]!.y = 0;
  const file = jsonFile('near.json', { pins: near });
  await openFile(page, file);
  await toFiles(page);
  await agree(page);
  await page.getByRole('button', { name: /^Engraving, targets/ }).click();
  await page.getByText('A sheet to print first').click();
  await choose(page, 'A4');
  await page.getByRole('button', { name: 'Make the DXF file' }).click();
  const fault = page.getByRole('button', { name: /run into each other/ });
  expect(await fault.textContent()).toContain('“The finished hole”');
  await page.getByRole('button', { name: 'pin0 with pin1', exact: true }).click();
  const first = await save(page, /^Save the sheet to print first/);
  expect((await readPdf(first.bytes)).pages[0]!.width).toBeCloseTo(210, 3);
  const made = await save(page, /^Save near.*\.dxf/);
  writeFileSync(at('near.json'), file.buffer);
  const options = ['--print-then-cut', at('first.pdf'), '--paper', 'A4'];
  await pinlight(['cut', at('near.json'), '-o', at('near.dxf'), ...options]);
  expect(made.bytes.equals(readFileSync(at('near.dxf')))).toBe(true);
  expect(first.bytes.equals(readFileSync(at('first.pdf')))).toBe(true);
  expect(complaints).toEqual([]);
});

test('a preset of the shop is taken from its file, and a file that is none is refused in words', async () => {
  const { page } = await visit();
  await openFile(page, example);
  await toFiles(page);
  await agree(page);
  await page.getByRole('button', { name: /^What your machine/ }).click();
  await giveFile(page, 'Open a preset of your shop', jsonFile('pins.json', { pins: [] }));
  await page.getByText('This is not a preset for cutting').waitFor();
  await giveFile(page, 'Open a preset of your shop', 'examples/quayside-workshop.json');
  await page.getByText('Preset:').waitFor();
  await page.getByRole('button', { name: 'Make the DXF file' }).click();
  const made = await save(page, /^Save Rosehip edging-.*\.dxf/);
  const expected = await commandFile('preset.dxf', ['--preset', 'examples/quayside-workshop.json']);
  expect(made.bytes.equals(expected)).toBe(true);
});

test('a pattern whose size nobody knows is not cut; by keyboard alone', async () => {
  const { page } = await visit();
  await openFile(page, jsonFile('px.json', { unit: 'px', pins: [{ x: 10, y: 10 }] }));
  await goTo(page, 'Make');
  await page.getByRole('radio', { name: /^sheets to print/ }).focus();
  await page.keyboard.press('ArrowDown');
  await page.getByRole('button', { name: 'I have read this' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Make the DXF file' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('Nobody knows how large this pattern is').waitFor();
  await page.getByRole('link', { name: 'To the stage Paper' }).waitFor();
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of the files for machines, in the ${look} look`, async () => {
    const { page } = await visit({ colorScheme: look });
    await openFile(page, example);
    await toFiles(page);
    expect(await violations(page)).toEqual([]);
    await agree(page);
    for (const fold of await page.locator('.fold-button').all()) await fold.click();
    await page.getByRole('button', { name: 'Make the DXF file' }).click();
    await page.getByText(/should measure/).waitFor();
    expect(await violations(page)).toEqual([]);
  });
}
