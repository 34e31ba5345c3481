import { readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { draft } from '#craft/draft/draft.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import arrangeSchema from '../../docs/schema/arrange.schema.json' with { type: 'json' };
import { pinlight, useCommand } from '../support/cli.ts';

const { at } = useCommand();
const ajv = new Ajv2020({ strict: false });

/** 2 repeats of 3 spacings of 5 mm, 15 mm wide: 46 pins. */
const strip = at('strip.json');
const drafted = draft({
  kind: 'strip',
  spacing: 5,
  angle: 45,
  repeats: 2,
  length: 3,
  width: 6,
  ground: 'plain',
});
if (!drafted.ok) throw new Error(JSON.stringify(drafted.trouble));
writeFileSync(strip, writePattern(drafted.value));

const save = (name: string, value: unknown): string => {
  writeFileSync(at(name), JSON.stringify(value));
  return at(name);
};
const hook = save('hook.json', {
  pins: [
    { x: 0, y: 0 },
    { x: 0, y: 10 },
    { x: 4, y: 10 },
  ],
});
const pinsIn = (name: string) => {
  const read = readPattern(readFileSync(at(name), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.trouble));
  return read.value.pins.map(({ x, y }) => [x, y]);
};
async function arranged(...words: string[]) {
  const run = await pinlight(['arrange', ...words, '-o', at('out.json'), '--json']);
  expect(run.code, run.err).toBe(0);
  const value = JSON.parse(run.out);
  expect(ajv.validate(arrangeSchema, value), JSON.stringify(ajv.errors)).toBe(true);
  return value;
}

describe('pinlight arrange', () => {
  test('--mirror changes sides, upright or level', async () => {
    await arranged(hook, '--mirror');
    expect(pinsIn('out.json')).toEqual([
      [4, 0],
      [4, 10],
      [0, 10],
    ]);
    await arranged(hook, '--mirror', 'level');
    expect(pinsIn('out.json')).toEqual([
      [0, 10],
      [0, 0],
      [4, 0],
    ]);
  });

  test('--turn goes clockwise about the middle', async () => {
    expect(await arranged(hook, '--turn', '90')).toMatchObject({ width: 10, height: 4 });
    expect(pinsIn('out.json')).toEqual([
      [7, 3],
      [-3, 3],
      [-3, 7],
    ]);
  });

  test('--scale keeps the recipe at the new size; turning drops it, and says so', async () => {
    const scaled = await pinlight(['arrange', strip, '--scale', '80%', '-o', at('scaled.json')]);
    expect(scaled.err).toMatch(/^46 pins, 12 mm \(0\.472 in\) across and 24 mm/);
    const read = readPattern(readFileSync(at('scaled.json'), 'utf8'));
    expect(read.ok && read.value.recipe).toMatchObject({ spacing: 4, angle: 45 });
    expect(await arranged(strip, '--scale', '1,41')).toMatchObject({ recipe: true, width: 21.15 });
    const turned = await pinlight(['arrange', strip, '--turn', '90', '-o', at('turned.json')]);
    expect(turned.err).toMatch(/Its recipe is left out/);
  });

  test('--repeat sets whole patterns on, with the pins at the joins once', async () => {
    // Rows of 4 and 3 pins in turn; the last row of one is the first of the next.
    expect(await arranged(strip, '--repeat', '3')).toMatchObject({ pins: 46 * 3 - 4 * 2, height: 90 });
    expect(await arranged(hook, '--repeat', '3', '--step', '4;10mm')).toMatchObject({ pins: 7, height: 30 });
  });

  test('--ground-angle makes the ground steeper and leaves the footside', async () => {
    const { width, height } = await arranged(strip, '--ground-angle', '60');
    expect(width).toBeCloseTo(15 * Math.tan(Math.PI / 3), 3);
    expect(height).toBe(30);
    expect((await arranged(strip, '--ground-angle', '45:54,5')).height).toBe(30);
  });

  test('--join lays patterns together, and --on a pin on a pin', async () => {
    expect(await arranged(hook, '--join', strip)).toMatchObject({ pins: 46 + 3 - 2 });
    expect(await arranged(hook, '--join', hook, '--on', 'p3=p1')).toMatchObject({
      pins: 5,
      width: 8,
      height: 20,
    });
  });

  test('steps are done in the order in which they are written', async () => {
    expect(await arranged(hook, '--turn', '90', '--repeat', '2', '--step', '10;0')).toMatchObject({
      width: 20,
    });
    expect(await arranged(hook, '--repeat', '2', '--step', '10;0', '--turn', '90')).toMatchObject({
      height: 14,
    });
    expect(await arranged(hook, '--turn', '90', '--turn', '-90', '--mirror', '--mirror')).toMatchObject({
      width: 4,
    });
    expect(pinsIn('out.json')).toEqual([
      [0, 0],
      [0, 10],
      [4, 10],
    ]);
  });

  test.each<[string[], RegExp]>([
    [[hook], /Nothing was asked for/],
    [[hook, '--turn', 'right'], /--turn "right" is not understood/],
    [[hook, '--scale', '0'], /--scale "0" is not understood/],
    [[hook, '--mirror', 'sideways'], /--mirror "sideways" is not understood/],
    [[hook, '--repeat', '0'], /--repeat "0" is not understood/],
    [[hook, '--repeat', '2'], /does not say how long a repeat is/],
    [[hook, '--repeat', '2', '--step', '0;0'], /step from one repeat to the next is nought/],
    [[hook, '--repeat', '2', '--step', '3'], /--step "3" is not understood/],
    [[strip, '--repeat', '9000'], /too many|at most/i],
    [[hook, '--ground-angle', '50'], /Give both angles/],
    [[hook, '--ground-angle', '45:50'], /no straight run of pins as its footside/],
    [[hook, '--ground-angle', '45:95'], /--ground-angle "45:95" is not understood/],
    [[hook, '--on', 'p1=p2'], /--on "p1=p2" is not understood/],
    [[hook, '--join', strip, '--on', 'p1=x9'], /no pin "x9"/],
    [[hook, '--join', 'nowhere.json'], /no such file/],
    [[hook, '--join', save('px.json', { unit: 'px', pins: [] })], /in pixels of a scan/],
  ])('refuses %j in words', async (words, sentence) => {
    const run = await pinlight(['arrange', ...words]);
    expect(run.code, run.out).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).toMatch(sentence);
  });

  test('never writes over what it is made from', async () => {
    const joined = await pinlight(['arrange', hook, '--join', strip, '-o', strip]);
    expect(joined.err).toMatch(/would replace/);
  });
});
