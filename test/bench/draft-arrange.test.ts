import { expect, test } from 'vitest';
import { arrangePattern } from '#jobs/arrange/arrange.ts';
import type { ArrangeStep } from '#jobs/arrange/steps.ts';
import { roundPattern } from '#pattern/file/round.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { violations } from '../support/bench/access.ts';
import { commanded, fromRecipe, pinPlaces } from '../support/bench/draft.ts';
import { fileAsked, giveFile, goTo, openFile, savedPattern, useBench } from '../support/bench/index.ts';

const bench = useBench();

/** What the command makes of a pattern. */
function arranged(pattern: Pattern, steps: readonly ArrangeStep[]): Pattern {
  const made = arrangePattern(pattern, steps);
  if (!made.ok) throw new Error(made.trouble.kind);
  return roundPattern(made.value.pattern);
}

test('a pattern is mirrored, turned, made smaller and repeated, each in one step, as the command does it', async () => {
  const { page, complaints, strangers } = await bench.visit();
  await fromRecipe(page, /^Capstan fan/);
  await page.getByText('Arrange the whole pattern').click();
  const steps: ArrangeStep[] = [];
  const expectArranged = async (step: ArrangeStep, said: string) => {
    steps.push(step);
    await page.getByText(said).waitFor();
    const wanted = arranged(commanded('capstan-fan', {}), steps);
    const places = (pattern: Pattern) => pinPlaces(pattern).map(([id, x, y]) => `${id} ${x} ${y}`);
    expect(places(await savedPattern(page))).toEqual(places(wanted));
  };
  await page.getByRole('button', { name: 'Make it so large' }).click();
  await expectArranged({ kind: 'scale', factor: 0.71 }, 'Made it 71 % of its size.');
  // One that was only scaled keeps its recipe.
  expect(await page.getByText('Change a figure').isVisible()).toBe(true);

  await page.getByRole('button', { name: 'Mirror left and right' }).click();
  await expectArranged({ kind: 'mirror', line: 90 }, 'Mirrored left and right.');
  await page.getByText('Its recipe is left out').waitFor();
  await page.getByText('This pattern keeps no recipe').waitFor();

  await page.getByLabel('How many in a row').fill('3');
  await page.getByRole('button', { name: 'Repeat', exact: true }).click();
  await expectArranged({ kind: 'repeat', count: 3, step: null }, 'Repeated it 3 times.');
  await page.getByRole('button', { name: 'Turn left by 90°' }).click();
  await expectArranged({ kind: 'turn', degrees: -90 }, 'Turned by 90 degrees to the left.');

  for (let step = 0; step < 4; step++) await page.getByRole('button', { name: 'Undo' }).click();
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('capstan-fan', {})));
  expect(complaints).toEqual([]);
  expect(strangers).toEqual([]);
});

test('another pattern is joined below, so that the footside goes on', async () => {
  const { page, complaints } = await bench.visit();
  const own = commanded('plain-strip', {});
  await fromRecipe(page, /^Plain strip/);
  await page.getByText('Arrange the whole pattern').click();
  const join = page.getByRole('button', { name: 'Join another pattern to it' });
  await (await fileAsked(page, () => join.press('Enter'))).setFiles('examples/drafted/plain-strip.json');
  await page.getByRole('button', { name: 'Join it' }).click();
  await page.getByText('Joined plain-strip.json.').waitFor();
  const { pins } = await savedPattern(page);
  // The row where they meet stands once: 5 pins of 221.
  expect(pins.length).toBe(2 * own.pins.length - own.pins.filter(({ y }) => y === 120).length);
  expect(Math.max(...pins.map(({ y }) => y))).toBeCloseTo(240, 9);
  expect(complaints).toEqual([]);
});

test('a pattern without a recipe says so, and can still be arranged; a recipe file is opened', async () => {
  const { page, complaints } = await bench.visit({ reducedMotion: 'reduce' });
  await openFile(page, 'examples/rosehip-edging.json');
  await goTo(page, 'Draft');
  await page.getByText('This pattern keeps no recipe').waitFor();
  await page.getByText('Arrange the whole pattern').click();
  expect(await violations(page)).toEqual([]);

  await page.getByRole('link', { name: 'From a recipe' }).click();
  await giveFile(page, 'Open a recipe file', 'examples/rosehip-edging.json');
  await page
    .getByRole('alert')
    .getByText(/rosehip-edging.json: this pattern keeps no recipe/)
    .waitFor();
  await giveFile(page, 'Open a recipe file', 'examples/drafted/ropewalk.json');
  await page.getByText('Change a figure').waitFor();
  expect(pinPlaces(await savedPattern(page))).toEqual(pinPlaces(commanded('ropewalk', {})));
  expect(complaints).toEqual([]);
});
