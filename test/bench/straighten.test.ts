import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { distance } from '#base/geometry/point.ts';
import { silent } from '#base/progress.ts';
import { seededRandom } from '#base/random.ts';
import { usualChoice } from '#jobs/true/choice.ts';
import { straightenPattern } from '#jobs/true/straighten.ts';
import { numberedName } from '#jobs/words/true.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import type { Structure } from '#pattern/structure.ts';
import { cameraOn, toScreen } from '../../src/bench/sheet/camera.ts';
import { violations } from '../support/bench/access.ts';
import { goTo, jsonFile, openFile, savedPattern, useBench } from '../support/bench/index.ts';
import { sheetAtRest } from '../support/bench/sheet.ts';
import { edging, jitter, omit } from '../support/patterns/index.ts';
import { reread } from '../support/reread.ts';

const bench = useBench();

/** An edging as an unsteady hand pricked it: one pin of the ground forgotten, one pricked twice. */
const strayed: Pattern = (() => {
  const { pattern, roles, ideal } = edging({ repeats: 5 });
  const known = jitter({ pattern, roles, ideal, omitted: [] }, 0.15, seededRandom(11));
  const forgotten = ideal.findIndex(({ x, y }, at) => roles[at] === 'ground' && x > 30 && y > 8);
  const { pattern: less } = omit(known, [forgotten]);
  const [first] = less.pins;
  return reread({ ...less, pins: [...less.pins, { id: 'twice', x: first!.x, y: first!.y }] });
})();

const file = (pattern: Pattern) => jsonFile('strayed.json', writePattern(pattern));

/** What the command makes of it. */
function byCommand(pattern: Pattern, known = {}, choice = {}) {
  const made = straightenPattern(pattern, known, { ...usualChoice, ...choice }, silent);
  if (!made.ok) throw new Error(JSON.stringify(made.trouble));
  return { ...made.value, pattern: reread(made.value.pattern) };
}

async function openAtStraighten(page: Page, pattern: Pattern): Promise<void> {
  await openFile(page, file(pattern));
  await goTo(page, 'Straighten');
  await page.getByRole('heading', { name: 'What was found' }).waitFor();
}

/** A button reached and pressed by the keyboard. */
async function press(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).focus();
  await page.keyboard.press('Enter');
}

test('what Straighten does is what the command does, and is undone as one step', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await openAtStraighten(page, strayed);
  await press(page, 'Straighten');
  const { pattern, result } = byCommand(strayed);
  await page
    .getByText(new RegExp(`^${result.moved.pins} pins moved, the farthest by`))
    .first()
    .waitFor();
  expect(await savedPattern(page)).toEqual(pattern);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  expect(await savedPattern(page)).toEqual(strayed);
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('parts are left, a missing pin is put in and a stray one taken out, by keyboard', async () => {
  const { result } = byCommand(strayed);
  expect(result.missing.length).toBeGreaterThan(0);
  expect(result.stray.length).toBeGreaterThan(0);
  const kept = result.structures.find(({ id }) => result.pins.some(({ structure }) => structure === id))!;
  const left = kept.id;
  const { page, complaints } = await bench.visit();
  await openAtStraighten(page, strayed);
  const all = page.getByRole('button', { name: /^Show all/ });
  if (await all.isVisible()) await all.click();
  await page.getByRole('switch', { name: new RegExp(`${numberedName(kept as Structure)}$`, 'i') }).focus();
  await page.keyboard.press('Space');
  const missing = page.getByRole('region', { name: 'Missing pins' });
  await missing.getByRole('button', { name: 'Go through them' }).press('Enter');
  await missing.getByText(/^A pin seems to be missing here/).waitFor();
  await missing.getByRole('button', { name: 'Put it in' }).press('Enter');
  await page.getByRole('button', { name: 'Take out all' }).press('Enter');
  await page.getByText(/1 missing pin would be put in; .*taken out/).waitFor();
  await press(page, 'Straighten');
  await page
    .getByText(/1 missing pin was put in/)
    .first()
    .waitFor();
  const moves = result.structures.map(({ id }) => id).filter((id) => id !== left);
  const { pattern } = byCommand(strayed, {}, { take: [...moves, 'missing-1'], dropStray: true });
  expect(await savedPattern(page)).toEqual(pattern);
  expect(complaints).toEqual([]);
});

test('two pins touched and their true distance set the size right', async () => {
  const { page, complaints } = await bench.visit();
  await openAtStraighten(page, strayed);
  await page.getByText('What copying did to it').click();
  await page.getByRole('button', { name: /^Touch two pins/ }).click();
  const sheet = page.locator('canvas.sheet');
  const { width, height } = (await sheet.boundingBox())!;
  const view = { width, height };
  const camera = cameraOn(boxOfPattern(strayed), view);
  for (const pin of [strayed.pins[10]!, strayed.pins.at(-10)!]) {
    const { left: x, top: y } = toScreen(camera, view, pin);
    await sheet.click({ position: { x, y } });
  }
  const words = await page.getByText(/^Pins \d+ and \d+\.$/).textContent();
  const [from, to] = words!.match(/\d+/g)!.map((number) => strayed.pins[Number(number) - 1]!);
  const length = Math.round(distance(from!, to!) * 1.1);
  await page.getByLabel('True distance of the two pins').fill(String(length));
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByText('The whole copy', { exact: true }).waitFor();
  await press(page, 'Straighten');
  await page
    .getByText(/the whole copy was put right/)
    .first()
    .waitFor();
  const { pattern } = byCommand(strayed, { distance: { from: from!.id, to: to!.id, length } });
  expect(await savedPattern(page)).toEqual(pattern);
  expect(complaints).toEqual([]);
});

test('the true angle of the ground sets a skewed copy right', async () => {
  const { page, complaints } = await bench.visit();
  await openAtStraighten(page, strayed);
  await page.getByText('What copying did to it').click();
  const angle = page.getByLabel('True angle of the ground to the footside, degrees');
  await angle.fill('95');
  await page.getByText('An angle is more than 0 and less than 90 degrees').waitFor();
  await press(page, 'Work it out');
  await page.getByText('Type the angle, or touch two pins').waitFor();
  await angle.fill('50,5');
  await press(page, 'Work it out');
  await page.getByText('The whole copy', { exact: true }).waitFor();
  await press(page, 'Straighten');
  await page
    .getByText(/the whole copy was put right/)
    .first()
    .waitFor();
  const { pattern } = byCommand(strayed, { angle: 50.5 });
  expect(pattern).not.toEqual(byCommand(strayed).pattern);
  expect(await savedPattern(page)).toEqual(pattern);
  await press(page, 'Undo');
  expect(await savedPattern(page)).toEqual(strayed);
  expect(complaints).toEqual([]);
});

test('the slider shows the pins where they were, on their way, and where they would stand', async () => {
  const { page, complaints } = await bench.visit();
  await openAtStraighten(page, strayed);
  const sheet = page.locator('canvas.sheet');
  const seen = async () => {
    await sheetAtRest(page);
    return (await sheet.screenshot()).toString('base64');
  };
  // Close enough that the moves are seen.
  await page
    .getByRole('button', { name: /to move, the farthest/ })
    .first()
    .click();
  const before = await seen();
  await page.getByRole('slider', { name: 'How far straightened' }).focus();
  await page.keyboard.press('End');
  const after = await seen();
  await page.keyboard.press('PageDown');
  const between = await seen();
  expect(new Set([before, after, between]).size).toBe(3);
  await press(page, 'As it was');
  expect(await seen()).toBe(before);
  expect(complaints).toEqual([]);
});

test('looking can be stopped and begun again', async () => {
  const { page } = await bench.visit();
  await openFile(
    page,
    file(reread(jitter(edging({ width: 61, repeats: 16 }), 0.15, seededRandom(3)).pattern)),
  );
  await goTo(page, 'Straighten');
  await page.getByRole('button', { name: 'Stop' }).press('Enter');
  await page.getByRole('button', { name: 'Look for lines, curves and grounds' }).click();
  await page.getByRole('heading', { name: 'What was found' }).waitFor();
});

for (const look of ['light', 'dark'] as const) {
  test(`nobody is shut out of straightening, in the ${look} look`, async () => {
    const { page } = await bench.visit({ colorScheme: look });
    await openAtStraighten(page, strayed);
    await page.getByText('How it is shown').click();
    await page.getByText('What copying did to it').click();
    await page.getByRole('button', { name: 'Go through them' }).first().click();
    expect(await violations(page)).toEqual([]);
  });
}
