import { expect, test } from 'vitest';
import type { Pattern } from '#pattern/pattern.ts';
import { violations } from '../support/bench/access.ts';
import { atMark, five, p1, p2, p3, p5 } from '../support/bench/at-mark.ts';
import { useBench } from '../support/bench/index.ts';

const bench = useBench();

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
  await expect.poll(async () => (await saved()).areas.length).toBe(1);
  await page.getByText('half stitch').click();
  await tap({ x: 4, y: 32 });
  await expect.poll(async () => (await saved()).areas.length).toBe(2);
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
