import { expect, test } from 'vitest';
import { writeContainer } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { commanded, fromRecipe, pinPlaces } from '../support/bench/draft.ts';
import { goTo, openFile, savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

test('what was done by hand survives a change of a figure', async () => {
  const { page } = await bench.visit();
  await fromRecipe(page, /^Plain strip/);
  await goTo(page, 'Pins');
  await page.getByRole('button', { name: 'Show the pins as a table' }).click();
  await page.getByRole('button', { name: '8', exact: true }).click();
  await page.getByLabel('Across').fill('31 mm');
  await page.keyboard.press('Enter');
  const moved = (await savedPattern(page)).pins.find(({ x }) => x === 31)!;
  const drafted = commanded('plain-strip', {}).pins.find(({ id }) => id === moved.id)!;

  await goTo(page, 'Draft');
  await page.getByLabel('Spacing of the pins', { exact: true }).fill('6');
  await page.getByText('1 edit made by hand is kept.').waitFor();
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByRole('button', { name: 'Leave it' }).waitFor({ state: 'detached' });
  const wider = commanded('plain-strip', { spacing: '6' }).pins.find(({ id }) => id === moved.id)!;
  const kept = (await savedPattern(page)).pins.find(({ id }) => id === moved.id)!;
  expect(kept.x - wider.x).toBeCloseTo(31 - drafted.x, 2);
});

test('an edit by hand whose pin is gone is told before the change is kept, and after', async () => {
  const { page, complaints } = await bench.visit();
  const drafted = commanded('plain-strip', {});
  const far = drafted.pins.find(({ id }) => id.startsWith('g7.'))!;
  const edited: Pattern = {
    ...drafted,
    pins: drafted.pins.map((pin) => (pin === far ? { ...pin, x: pin.x + 0.5 } : pin)),
  };
  await openFile(page, {
    name: 'edited.pinlight',
    mimeType: 'application/zip',
    buffer: Buffer.from(writeContainer({ pattern: edited, pictures: new Map() })),
  });
  await goTo(page, 'Draft');
  await page.getByLabel('Width', { exact: true }).fill('6');
  const lost = page.getByText(`The pin ${far.id} was changed, and is no longer drafted.`);
  await lost.waitFor();
  await page.getByText('1 edit made by hand cannot be kept').waitFor();
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByRole('button', { name: 'Leave it' }).waitFor({ state: 'detached' });
  expect(await lost.isVisible()).toBe(true);
  const kept = await savedPattern(page);
  expect(pinPlaces(kept)).toEqual(pinPlaces(commanded('plain-strip', { width: '6' })));

  await page.getByRole('button', { name: 'Undo' }).click();
  expect((await savedPattern(page)).pins.find(({ id }) => id === far.id)!.x).toBeCloseTo(far.x + 0.5, 3);
  expect(complaints).toEqual([]);
});
