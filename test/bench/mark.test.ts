import { expect, test } from 'vitest';
import type { Point } from '#base/geometry/point.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern, patternFromPins } from '#pattern/pins.ts';
import { type Camera, cameraOn, toScreen } from '../../src/bench/sheet/camera.ts';
import { violations } from '../support/bench/access.ts';
import { goTo, openFile, useBench, type Visit } from '../support/bench/index.ts';
import { savedPattern } from '../support/bench/saved-pattern.ts';

const bench = useBench();

/** Pins p1 to p4 at the corners of an upright rectangle of 16 by 40 mm, p5 in its middle. */
const five = patternFromPins([
  { x: 0, y: 0 },
  { x: 16, y: 0 },
  { x: 16, y: 40 },
  { x: 0, y: 40 },
  { x: 8, y: 20 },
]);
const [p1, p2, p3, p4, p5] = five.pins as unknown as [Point, Point, Point, Point, Point];

const asFile = (pattern: Pattern) => ({
  name: 'five.json',
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify({ pins: pattern.pins, marks: pattern.marks, areas: pattern.areas })),
});

/** Opens the pattern at the stage Mark, with ways to touch it where one means to. */
async function atMark(visit: Visit, pattern = five) {
  const { page } = visit;
  await openFile(page, asFile(pattern));
  await goTo(page, 'Mark');
  const sheet = page.locator('canvas.sheet');
  const { x, y, width, height } = (await sheet.boundingBox())!;
  const view = { width, height };
  const camera: Camera = cameraOn(boxOfPattern(pattern), view);
  let cursor = { left: width / 2, top: height / 2 };
  return {
    page,
    wish: (words: string | RegExp) => page.locator('.wishes').getByText(words).click(),
    async click(place: Point) {
      const { left, top } = toScreen(camera, view, place);
      await sheet.click({ position: { x: left, y: top } });
    },
    async tap(place: Point) {
      const { left, top } = toScreen(camera, view, place);
      await page.touchscreen.tap(x + left, y + top);
    },
    /** Takes the keyboard's cursor there and presses Enter. */
    async enter(place: Point) {
      await sheet.focus();
      const { left, top } = toScreen(camera, view, place);
      const steps = async (away: number, forward: string, back: string): Promise<number> => {
        const count = Math.round(away / 20);
        for (let step = 0; step < Math.abs(count); step++)
          await page.keyboard.press(count > 0 ? forward : back);
        return count * 20;
      };
      cursor = {
        left: cursor.left + (await steps(left - cursor.left, 'ArrowRight', 'ArrowLeft')),
        top: cursor.top + (await steps(top - cursor.top, 'ArrowDown', 'ArrowUp')),
      };
      await page.keyboard.press('Enter');
    },
    saved: () => savedPattern(page),
  };
}

test('every kind of marking is made by touch, joined to its pins, and kept in the saved file', async () => {
  const visit = await bench.visit({ hasTouch: true });
  const { page, wish, tap, saved } = await atMark(visit);
  const free = { x: 8, y: 8 };

  await wish('draws a working line');
  for (const pin of [p1, p2, p3, p3]) await tap(pin);
  await wish('lays a gimp');
  for (const place of [p1, free, p2, p1]) await tap(place);
  await wish('draws a plait');
  await tap(free);
  await page.getByText('A plait begins and ends at a pin').waitFor();
  for (const pin of [p3, p4]) await tap(pin);
  await page.getByRole('button', { name: 'Done' }).tap();
  await wish('marks a picot');
  await tap(p4);
  await wish('draws an arrow');
  for (const place of [free, p5]) await tap(place);
  await page.getByLabel('Words at its tail').fill('2 pairs');
  await wish('puts a number');
  for (const pin of [p1, p5]) await tap(pin);
  await wish('writes words');
  await tap(free);
  await page.getByLabel('Words for this place').fill('Footside');
  await page.getByRole('button', { name: 'Write them' }).tap();

  const { marks } = await saved();
  expect(marks).toMatchObject([
    { kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
    { kind: 'line', from: { pin: 'p2' }, to: { pin: 'p3' } },
    { kind: 'gimp', path: [{ pin: 'p1' }, {}, { pin: 'p2' }], closed: true, width: 0.8 },
    { kind: 'plait', path: [{ pin: 'p3' }, { pin: 'p4' }] },
    { kind: 'picot', at: { pin: 'p4' }, side: 'left' },
    { kind: 'arrow', to: { pin: 'p5' }, label: '2 pairs' },
    { kind: 'number', at: { pin: 'p1' }, value: 1 },
    { kind: 'number', at: { pin: 'p5' }, value: 2 },
    { kind: 'text', text: 'Footside', height: 3 },
  ]);
  const [, , gimp, , , arrow, , , text] = marks;
  for (const place of [
    gimp?.kind === 'gimp' && gimp.path[1],
    arrow?.kind === 'arrow' && arrow.from,
    text?.kind === 'text' && text.at,
  ] as Point[]) {
    expect(place.x).toBeCloseTo(free.x, 0);
    expect(place.y).toBeCloseTo(free.y, 0);
  }
  expect(visit.complaints).toEqual([]);
  expect(visit.strangers).toEqual([]);
});

test('lines and a gimp are made by keyboard alone, chosen from the table, changed, removed and undone', async () => {
  const visit = await bench.visit();
  const { page, enter, saved } = await atMark(visit);
  await page.getByRole('radio', { name: 'draws a working line' }).press('Space');
  await enter(p1);
  await enter(p2);
  await enter(p4);
  await page.keyboard.press('Backspace');
  await enter(p3);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Chosen: working line' }).waitFor();
  await page.getByRole('radio', { name: /draws a working line/ }).focus();
  await page.keyboard.press('ArrowDown');
  await enter(p5);
  await page.keyboard.press('Escape');
  await enter(p4);
  await enter(p5);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Chosen: gimp' }).waitFor();
  expect((await saved()).marks).toMatchObject([
    { kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
    { kind: 'line', from: { pin: 'p2' }, to: { pin: 'p3' } },
    { kind: 'gimp', path: [{ pin: 'p4' }, { pin: 'p5' }] },
  ]);

  const show = page.getByRole('button', { name: 'Show the markings as a table' });
  await show.focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: '3: Gimp' }).focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('Its thickness').fill('1,2');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: '2: Working line' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Remove this marking' }).focus();
  await page.keyboard.press('Enter');
  expect((await saved()).marks).toMatchObject([{ kind: 'line' }, { kind: 'gimp', width: 1.2 }]);
  for (let step = 0; step < 3; step++) await page.getByRole('button', { name: 'Undo' }).press('Enter');
  expect((await saved()).marks).toMatchObject([{ kind: 'line' }, { kind: 'line' }]);
  await page.getByRole('button', { name: 'Undo' }).press('Enter');
  expect((await saved()).marks).toEqual([]);
  expect(visit.complaints).toEqual([]);
});

test('a touch chooses the marking that it meets, and a second one what lies under it', async () => {
  const visit = await bench.visit();
  const { page, click, saved } = await atMark(visit, {
    ...five,
    marks: [
      { id: 'm1', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
      { id: 'm2', kind: 'gimp', path: [{ pin: 'p1' }, { pin: 'p2' }], closed: false, width: 1 },
      { id: 'm3', kind: 'number', at: { pin: 'p5' }, value: 7 },
    ],
  });
  await click({ x: 8, y: 10 });
  await page.getByText('No marking is near this place.').waitFor();
  await click({ x: 6, y: 0 });
  const chosen = page.getByRole('region', { name: 'The chosen marking' }).getByRole('heading');
  const first = (await chosen.textContent())!;
  await click({ x: 6, y: 0 });
  await expect
    .poll(async () => [first, await chosen.textContent()].sort())
    .toEqual(['Chosen: gimp', 'Chosen: working line']);
  await click({ x: 9, y: 19 });
  await page.getByLabel('The number').fill('seven');
  await page.getByText('Type a whole number, such as 12.').waitFor();
  await page.getByLabel('The number').fill('8');
  await page.keyboard.press('Enter');
  expect((await saved()).marks[2]).toEqual({ id: 'm3', kind: 'number', at: { pin: 'p5' }, value: 8 });
  await page.getByRole('button', { name: 'Put it elsewhere' }).click();
  await click(p4);
  await page.getByRole('button', { name: 'Put it elsewhere' }).waitFor();
  expect((await saved()).marks[2]).toEqual({ id: 'm3', kind: 'number', at: { pin: 'p4' }, value: 8 });
  expect(visit.complaints).toEqual([]);
});

const square: Pattern = {
  ...five,
  marks: [
    { id: 'm1', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
    { id: 'm2', kind: 'line', from: { pin: 'p2' }, to: { pin: 'p3' } },
    { id: 'm3', kind: 'line', from: { pin: 'p3' }, to: { pin: 'p4' } },
    { id: 'm4', kind: 'line', from: { pin: 'p4' }, to: { pin: 'p1' } },
    { id: 'm5', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p3' } },
  ],
};

test('areas are tinted by touching inside, chosen by touching again, changed, removed and undone', async () => {
  const visit = await bench.visit({ hasTouch: true });
  const { page, wish, tap, saved } = await atMark(visit, square);
  await wish('tints an area');
  await tap({ x: 12, y: 8 });
  await page.getByText('half stitch').click();
  await tap({ x: 4, y: 32 });
  const corners = (...pins: string[]) => pins.map((pin) => ({ pin }));
  const rounds = (pattern: Pattern) =>
    pattern.areas.map(({ outline, stitch }) => ({ outline: new Set(outline), stitch }));
  expect(rounds(await saved())).toEqual([
    { outline: new Set(corners('p1', 'p2', 'p3')), stitch: 'cloth' },
    { outline: new Set(corners('p1', 'p3', 'p4')), stitch: 'half' },
  ]);

  await tap({ x: 12, y: 8 });
  const chosen = page.getByRole('region', { name: 'The chosen area' });
  await chosen.getByText('filling').click();
  await chosen.getByLabel('Your own word for it').fill('brick');
  await chosen.getByText('A colour of my own').click();
  const { areas } = await saved();
  expect(areas[0]).toMatchObject({ id: 'a1', stitch: 'filling', name: 'brick', tint: '#f2e0a6' });
  await chosen.getByRole('button', { name: 'Remove this tint' }).tap();
  expect(rounds(await saved())).toHaveLength(1);
  for (let step = 0; step < 6; step++) await page.getByRole('button', { name: 'Undo' }).tap();
  expect((await saved()).areas).toEqual([]);
  expect(visit.complaints).toEqual([]);
});

test('where nothing encloses, the pins round an area are touched by keyboard', async () => {
  const visit = await bench.visit();
  const { page, enter, saved } = await atMark(visit, { ...square, marks: square.marks.slice(1) });
  await page.getByRole('radio', { name: 'tints an area' }).press('Space');
  await enter({ x: 12, y: 8 });
  await page.getByText('The lines do not go all the way round this place').waitFor();
  await page.getByRole('button', { name: 'Touch the pins round it' }).press('Enter');
  for (const pin of [p1, p2, p3, p1]) await enter(pin);
  expect((await saved()).areas).toEqual([
    { id: 'a1', stitch: 'cloth', outline: [{ pin: 'p1' }, { pin: 'p2' }, { pin: 'p3' }] },
  ]);
  expect(visit.complaints).toEqual([]);
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of marking, in the ${look} look`, async () => {
    const visit = await bench.visit({ colorScheme: look });
    const { page, wish, click } = await atMark(visit, square);
    expect(await violations(page)).toEqual([]);
    await wish('lays a gimp');
    await click(p1);
    await click(p5);
    expect(await violations(page)).toEqual([]);
    await wish('tints an area');
    await click({ x: 12, y: 8 });
    await click({ x: 12, y: 8 });
    await page.getByRole('region', { name: 'The chosen area' }).getByRole('switch').press('Space');
    await page.getByRole('button', { name: 'Show the markings as a table' }).click();
    expect(await violations(page)).toEqual([]);
    expect(visit.complaints).toEqual([]);
  });
}
