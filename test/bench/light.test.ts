import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { beforeAll, expect, test } from 'vitest';
import type { GreyPicture } from '#base/picture/grey.ts';
import { seededRandom } from '#base/random.ts';
import { paperNamed } from '#base/units/paper.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import { checkCard } from '#jobs/light/light.ts';
import { checkSheets } from '#jobs/light/sheets.ts';
import { openToWork } from '#jobs/open.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { BENCH } from '#jobs/words/door.ts';
import { faultsInWords, lightNoteInWords, lightTroubleInWords, summaryInWords } from '#jobs/words/light.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { typeface } from '../paper/support/fonts.ts';
import { violations } from '../support/bench/access.ts';
import {
  choose,
  downloaded,
  fileAsked,
  giveFile,
  goTo,
  jsonFile,
  openFile,
  useBench,
} from '../support/bench/index.ts';
import { sheetAtRest } from '../support/bench/sheet.ts';
import { photographCard } from '../support/card/index.ts';
import { edging, tape } from '../support/patterns/index.ts';

const bench = useBench();
const { pins } = edging({ repeats: 1 }).pattern;
const view = { width: 1200, height: 900, scene: 'window', turn: 30, tilt: 5 } as const;

const cardFile = jsonFile('Try.json', { unit: 'mm', about: { name: 'Try' }, pins });

/** As a browser and the job each get it: PNG loses nothing. */
async function photoFile({ width, height, grey }: GreyPicture) {
  const buffer = await sharp(grey, { raw: { width, height, channels: 1 } })
    .png()
    .toBuffer();
  return { name: 'card.png', mimeType: 'image/png', buffer };
}

const picture = photographCard(pins, { ...view, mirrored: true }, seededRandom(1)).picture;
let photo: Awaited<ReturnType<typeof photoFile>>;
let pattern: Pattern;
beforeAll(async () => {
  photo = await photoFile(picture);
  const opened = openToWork(cardFile.buffer);
  if (!opened.ok) throw new Error(JSON.stringify(opened.trouble));
  pattern = opened.value.pattern;
});

function judged(cardThickness: number | null = null): Judgement {
  const checked = checkCard(pattern, picture, cardThickness, () => {});
  if (!checked.ok) throw new Error(JSON.stringify(checked.trouble));
  return checked.value;
}

async function checked(page: Page): Promise<void> {
  await openFile(page, cardFile);
  await goTo(page, 'Light');
  await giveFile(page, 'Choose a photo', photo);
  await page.getByText(/^Held to the light/).waitFor();
}

const places = (page: Page) =>
  page.locator('.faults > li > button').evaluateAll((all) => all.map((one) => one.textContent ?? ''));

/** How much of the sheet is neither white nor black. */
const greyShare = async (page: Page): Promise<number> => {
  await sheetAtRest(page);
  return page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('canvas.sheet')!;
    const copy = new OffscreenCanvas(canvas.width, canvas.height).getContext('2d')!;
    copy.drawImage(canvas, 0, 0);
    const { data } = copy.getImageData(0, 0, canvas.width, canvas.height);
    let grey = 0;
    for (let at = 0; at < data.length; at += 4) if (data[at]! > 30 && data[at]! < 240) grey++;
    return (4 * grey) / data.length;
  });
};

test("the verdicts are the job's, on the photo or the pattern, and what is mended stays ticked off", async () => {
  const { page, complaints, strangers } = await bench.visit();
  await checked(page);
  const judgement = judged();
  await page.getByText(summaryInWords(judgement)).waitFor();
  for (const note of judgement.notes) await page.getByText(lightNoteInWords(note)).waitFor();
  const wanted = faultsInWords(judgement).filter((words) => words !== null);
  const found = await places(page);
  expect(found).toHaveLength(wanted.length);
  for (const [index, words] of wanted.entries()) expect(found[index]).toContain(words);
  const { missing, extra, offCentre, oval } = judgement;
  for (const kind of [missing, extra, offCentre, oval]) expect(kind.length).toBeGreaterThan(0);

  expect(await greyShare(page)).toBeGreaterThan(0.2);
  await choose(page, 'the pattern');
  await expect.poll(() => greyShare(page)).toBeLessThan(0.1);

  await page.getByRole('button', { name: `Mended: ${wanted[0]}` }).click();
  await page.getByText(`${wanted.length - 1} places to see to`).waitFor();
  await page.reload();
  await page.getByText(`${wanted.length - 1} places to see to`).waitFor();
  await page.getByText(summaryInWords(judgement)).waitFor();
  expect(await page.getByRole('radio', { name: 'the photo' }).count()).toBe(0);
  await page.getByRole('button', { name: `Mended: ${wanted[0]}`, pressed: true }).waitFor();
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('the photo lies so on the sheet that every sound hole shines at its pin', async () => {
  const { page } = await bench.visit();
  await openFile(page, cardFile);
  await goTo(page, 'Light');
  const whole = photographCard(
    pins,
    { ...view, scene: 'lightbox', mirrored: true, faults: { missing: 0, offCentre: 0, oval: 0, extra: 0 } },
    seededRandom(3),
  ).picture;
  await giveFile(page, 'Choose a photo', await photoFile(whole));
  await page.getByText(/every hole is there and in its place/).waitFor();
  await sheetAtRest(page);
  const shines = await page.evaluate(
    async ([pins]) => {
      const canvas = document.querySelector<HTMLCanvasElement>('canvas.sheet')!;
      const context = canvas.getContext('2d')!;
      const xs = pins.map(({ x }) => x);
      const ys = pins.map(({ y }) => y);
      const [left, right] = [Math.min(...xs), Math.max(...xs)];
      const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
      const buttons = canvas.clientHeight > 4 * 56 ? 56 : 0;
      const scale = Math.min(
        canvas.clientWidth / ((right - left) * 1.1),
        (canvas.clientHeight - buttons) / ((bottom - top) * 1.1),
      );
      const level = (x: number, y: number) => {
        const column = Math.round((x - (left + right) / 2) * scale + canvas.clientWidth / 2);
        const row = Math.round((y - (top + bottom) / 2) * scale + (canvas.clientHeight - buttons) / 2);
        return context.getImageData(column, row, 1, 1).data[0]!;
      };
      return pins.map(({ x, y }) => level(x, y) - level(x + 0.9, y));
    },
    [pins.map(({ x, y }) => ({ x, y }))] as const,
  );
  expect(shines.filter((more) => more > 20).length).toBeGreaterThan(0.97 * pins.length);
});

test('the map to prick again by is, byte for byte, the one that the job makes', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await checked(page);
  await page.getByRole('button', { name: 'A map to prick again by' }).click();
  await choose(page, 'A4');
  await choose(page, 'from the back');
  const map = await downloaded(page, () => page.getByRole('button', { name: 'Make the map for A4' }).click());
  expect(map.name).toBe('Try-check-A4.pdf');
  const wish = { typeface, paper: paperNamed('A4')!, side: 'back' } as const;
  const sheets = checkSheets(pattern, picture, judged(), wish);
  const expected = await sheetsToPdf(sheets, typeface, 'Try', null);
  expect(map.bytes.equals(Buffer.from(expected))).toBe(true);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('a thicker card tells another lean, none is told where nobody says how thick it is, and other pins make the list void', async () => {
  const { page } = await bench.visit();
  await checked(page);
  await page.getByLabel('How thick the card is').fill('0,4');
  await page.keyboard.press('Enter');
  const leaning = faultsInWords(judged(0.4)).find((words) => words?.includes('the needle leant'))!;
  await page.getByText(leaning).waitFor();
  await page.getByLabel('How thick the card is').fill('');
  await page.keyboard.press('Enter');
  await page.getByText(/the needle leant/).waitFor({ state: 'detached' });
  await page.getByText(summaryInWords(judged())).waitFor();
  expect(await page.getByLabel('How thick the card is').inputValue()).toBe('');
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  await page.getByRole('button', { name: '1', exact: true }).click();
  await page.getByRole('button', { name: 'Remove this pin' }).click();
  await goTo(page, 'Light');
  await page.getByText('Pins were added, moved or removed since the last photo was checked.').waitFor();
  expect(await page.locator('.faults').count()).toBe(0);
});

test('a photo that says nothing is told in words, and another is tried', async () => {
  const { page, complaints } = await bench.visit();
  await openFile(page, cardFile);
  await goTo(page, 'Light');
  await giveFile(page, 'Choose a photo', { ...photo, buffer: Buffer.from('no picture') });
  await page.getByText('This is no picture that can be read.').waitFor();
  await giveFile(page, 'Choose a photo', { ...photo, buffer: photo.buffer.subarray(0, 3000) });
  await page.getByText('The PNG picture is damaged or breaks off.').waitFor();
  const black = { width: 400, height: 300, grey: new Uint8Array(120_000) };
  await giveFile(page, 'Choose a photo', await photoFile(black));
  await page.getByText('No holes were seen in this photo.').waitFor();
  const other = photographCard(tape().pattern.pins, view, seededRandom(2)).picture;
  await giveFile(page, 'Choose a photo', await photoFile(other));
  const refused = checkCard(pattern, other, null, () => {});
  if (refused.ok) throw new Error('another card is taken for this one');
  await page.getByText(lightTroubleInWords(refused.trouble, BENCH)).waitFor();
  await giveFile(page, 'Choose a photo', photo);
  await page.getByText(/^Held to the light/).waitFor();
  await page.getByRole('button', { name: 'Try another photo' }).waitFor();
  expect(complaints).toEqual([]);
});

test('a pattern of unknown size leads to the paper', async () => {
  const { page } = await bench.visit();
  await openFile(page, jsonFile('Try.json', { unit: 'px', pins }));
  await goTo(page, 'Light');
  await page.getByText('Measure a distance on its paper at the stage Paper.').waitFor();
  await page.getByRole('link', { name: 'To the stage Paper' }).click();
  await page.getByRole('heading', { level: 2, name: 'Paper' }).waitFor();
});

test('by keyboard alone: a photo is chosen, a fault shown and mended', async () => {
  const { page } = await bench.visit();
  await openFile(page, cardFile);
  await page.getByRole('link', { name: 'Light', exact: true }).focus();
  await page.keyboard.press('Enter');
  const choose = page.getByRole('button', { name: 'Choose a photo' });
  await (await fileAsked(page, () => choose.press('Enter'))).setFiles(photo);
  const first = page.locator('.faults > li').first();
  await first.getByRole('button').first().focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => first.getAttribute('aria-current')).toBe('true');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await first.getByRole('button', { name: /^Mended/, pressed: true }).waitFor();
});

test.each(['light', 'dark'] as const)('nobody is shut out, in the %s look', async (look) => {
  const { page } = await bench.visit({ colorScheme: look });
  await openFile(page, cardFile);
  await goTo(page, 'Light');
  await page.getByRole('button', { name: 'Choose a photo' }).waitFor();
  expect(await violations(page)).toEqual([]);
  await giveFile(page, 'Choose a photo', photo);
  await page.getByText(/^Held to the light/).waitFor();
  await page
    .getByRole('button', { name: /^Mended/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'A map to prick again by' }).click();
  expect(await violations(page)).toEqual([]);
});
