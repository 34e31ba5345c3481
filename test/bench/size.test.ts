import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { silent } from '#base/progress.ts';
import { threadOf } from '#craft/size/thread.ts';
import { sizePattern } from '#jobs/size/size.ts';
import type { SizeWish } from '#jobs/size/wish.ts';
import { choiceInWords, percentInWords, wantedInWords } from '#jobs/words/size.ts';
import { readThreadList } from '#pattern/threads/thread-list.ts';
import { violations } from '../support/bench/access.ts';
import {
  choose,
  downloaded,
  giveFile,
  goTo,
  openFile,
  savedPattern,
  useBench,
} from '../support/bench/index.ts';
import { pinlight, useCommand } from '../support/cli.ts';
import { plainSizeWish } from '../support/plain-size-wish.ts';
import { patternIn, reread } from '../support/reread.ts';

const bench = useBench();
const { at } = useCommand();

const EXAMPLE = 'examples/rosehip-edging.json';
const example = patternIn(await readFile(EXAMPLE, 'utf8'));

/** What the command makes of it. */
function byCommand(wish: Partial<SizeWish>) {
  const sized = sizePattern(example, { ...plainSizeWish, ...wish }, silent);
  if (!sized.ok) throw new Error(JSON.stringify(sized.trouble));
  return { ...sized.value, pattern: reread(sized.value.pattern!) };
}

async function openAtSize(page: Page): Promise<void> {
  await openFile(page, EXAMPLE);
  await goTo(page, 'Size');
  await page.getByRole('heading', { name: 'What suits it as it is' }).waitFor();
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).press('Enter');
const makeIt = (page: Page, words: string) =>
  page.getByRole('combobox', { name: 'Make it' }).selectOption(words);

test('a percentage, by keyboard: what the command makes, and undone as one step', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await openAtSize(page);
  await page.getByText(wantedInWords(byCommand({}))!).waitFor();
  await makeIt(page, 'a percentage');
  await page.getByLabel('Percentage of its size').fill('71 %');
  await page.getByLabel('Percentage of its size').press('Enter');
  await page.getByRole('region', { name: 'The new size' }).getByText('71 %').first().waitFor();
  await press(page, 'Make it this size');
  await page.getByText('The pattern is now 71 % of its size.').first().waitFor();
  expect(await savedPattern(page)).toEqual(byCommand({ target: { kind: 'scale', factor: 0.71 } }).pattern);
  await press(page, 'Undo');
  expect(await savedPattern(page)).toEqual(example);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('a thread from the spool is judged, kept in the list, and the pattern is made to suit it', async () => {
  const { page, complaints } = await bench.visit();
  await openAtSize(page);
  await press(page, 'Another thread');
  await page.getByLabel('What stands on the spool').fill('80/2');
  await press(page, 'Use this thread');
  await page.getByText('does not say in which system').waitFor();
  await page.getByLabel('What stands on the spool').fill('NeL 35/2');
  await page.getByLabel('Wraps that you counted').fill('20/cm');
  await press(page, 'Use this thread');
  await press(page, 'Keep it in my list');
  await press(page, 'Size the pattern for it');
  const thread = threadOf({ name: 'NeL 35/2', fibre: 'linen', count: 'NeL 35/2', wrapsPerCm: 20 });
  if (!thread.ok) throw new Error(thread.trouble.kind);
  const sized = byCommand({ threads: [thread.value], target: { kind: 'thread' } });
  await page
    .getByRole('region', { name: 'The new size' })
    .getByText(percentInWords(sized.factor))
    .first()
    .waitFor();
  await press(page, 'Make it this size');
  await page
    .getByText(`The pattern is now ${percentInWords(sized.factor)} of its size.`)
    .first()
    .waitFor();
  expect(await savedPattern(page)).toEqual(sized.pattern);
  await page.reload();
  await page.getByRole('button', { name: /^NeL 35\/2 suits/ }).waitFor();
  expect(complaints).toEqual([]);
});

test('whole repeats round a pillow, the number chosen', async () => {
  const { page, complaints } = await bench.visit();
  await openAtSize(page);
  await makeIt(page, 'whole repeats round a pillow');
  await page.getByLabel('Once round the pillow').fill('478');
  await page.getByLabel('Once round the pillow').press('Enter');
  const target = {
    kind: 'fit',
    place: { kind: 'roller', circumference: 478 },
    corners: { mm: 0 },
    way: null,
    repeats: null,
    limit: 0.1,
  } as const;
  await page.getByLabel('The most that may change').fill('10 %');
  await page.getByLabel('The most that may change').press('Enter');
  const free = byCommand({ target });
  const other = free.fitted!.choices.find((choice) => choice !== free.fitted!.chosen && choice.fits)!;
  await page.getByText(choiceInWords(other, free.before.spacing)).click();
  const sized = byCommand({ target: { ...target, repeats: other.counts[0]!, way: other.way } });
  await page
    .getByRole('region', { name: 'The new size' })
    .getByText(percentInWords(sized.factor))
    .first()
    .waitFor();
  await press(page, 'Make it this size');
  await page
    .getByText(/^The pattern is now/)
    .first()
    .waitFor();
  expect(await savedPattern(page)).toEqual(sized.pattern);
  expect(complaints).toEqual([]);
});

test('a list from a file, the table of it as the command makes it, byte for byte, and the list as a file again', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await openAtSize(page);
  await giveFile(page, 'Open a list of threads', 'examples/threads.json');
  await page.getByText('8 threads put in your list.').waitFor();
  await press(page, 'A table to lay beside your threads');
  await choose(page, 'A4');
  const { bytes: pdf } = await downloaded(page, () => press(page, 'Save the table as a PDF'));
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(2);
  const lists = ['--threads', 'examples/threads.json', '--paper', 'A4'];
  const made = await pinlight(['size', EXAMPLE, ...lists, '--table', at('table.pdf')]);
  expect(made.code, made.err).toBe(0);
  expect(pdf.equals(await readFile(at('table.pdf')))).toBe(true);
  const { name, bytes } = await downloaded(page, () => press(page, 'Save my list as a file'));
  expect(name).toBe('my-threads.json');
  const kept = readThreadList(bytes.toString());
  expect(kept).toMatchObject({ ok: true });
  expect(kept).toEqual(readThreadList(await readFile('examples/threads.json', 'utf8')));
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of sizing, in the ${look} look`, async () => {
    const { page } = await bench.visit({ colorScheme: look });
    await openAtSize(page);
    for (const fold of ['Another thread', 'What the pattern does not tell', 'Needle, and what this rests on'])
      await press(page, fold);
    await makeIt(page, 'whole repeats on the sides of a cloth');
    await page.getByLabel('One side of the cloth').fill('280');
    await page.getByLabel('One side of the cloth').press('Enter');
    await page.getByRole('region', { name: 'The new size' }).waitFor();
    expect(await violations(page)).toEqual([]);
  });
}
