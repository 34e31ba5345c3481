import { expect, test } from 'vitest';
import type { Point } from '#base/geometry/point.ts';
import { atMark, five, p1, p2, p3, p4, p5 } from '../support/bench/at-mark.ts';
import { useBench } from '../support/bench/index.ts';

const bench = useBench();

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

test('the points of a marking are moved by dragging, by touching, and by keyboard, each as one step', async () => {
  const visit = await bench.visit();
  const { page, click, drag, enter, saved } = await atMark(visit, {
    ...five,
    marks: [
      { id: 'm1', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
      { id: 'm2', kind: 'line', from: { pin: 'p3' }, to: { pin: 'p5' } },
      {
        id: 'm3',
        kind: 'gimp',
        path: [{ pin: 'p1' }, { x: 4, y: 30 }, { pin: 'p4' }],
        closed: false,
        width: 1,
      },
    ],
  });
  await click({ x: 8, y: 0 });
  await page.getByRole('heading', { name: 'Chosen: working line' }).waitFor();
  await drag(p2, p5);
  expect((await saved()).marks[0]).toMatchObject({ from: { pin: 'p1' }, to: { pin: 'p5' } });
  await drag(p5, { x: 3, y: 10 });
  await page.getByText('A working line goes from pin to pin').waitFor();
  await drag(p5, p1);
  await page.getByText('cannot lie in one place').waitFor();
  await drag(p1, p3);
  await page.getByText('joined by a working line already').waitFor();
  expect((await saved()).marks[0]).toMatchObject({ from: { pin: 'p1' }, to: { pin: 'p5' } });
  await page.getByRole('button', { name: 'Move its beginning' }).click();
  await click(p4);
  await expect
    .poll(async () => (await saved()).marks[0])
    .toMatchObject({ from: { pin: 'p4' }, to: { pin: 'p5' } });

  await page.getByRole('button', { name: 'Show the markings as a table' }).press('Enter');
  await page.getByRole('button', { name: '3: Gimp' }).press('Enter');
  await page.getByRole('button', { name: 'Whole sheet' }).press('Enter');
  await page.getByRole('button', { name: 'Move one of its points' }).press('Enter');
  await page.getByRole('button', { name: 'Move point 2' }).press('Enter');
  await enter(p5);
  await expect
    .poll(async () => (await saved()).marks[2])
    .toMatchObject({ path: [{ pin: 'p1' }, { pin: 'p5' }, { pin: 'p4' }] });
  for (let step = 0; step < 3; step++) await page.getByRole('button', { name: 'Undo' }).press('Enter');
  expect((await saved()).marks).toMatchObject([
    { from: { pin: 'p1' }, to: { pin: 'p2' } },
    { from: { pin: 'p3' }, to: { pin: 'p5' } },
    { path: [{ pin: 'p1' }, { x: 4, y: 30 }, { pin: 'p4' }] },
  ]);
  expect(visit.complaints).toEqual([]);
});
