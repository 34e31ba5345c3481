import { readFileSync, writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { library } from '#craft/draft/library/index.ts';
import { readPattern } from '#pattern/file/read.ts';
import { readRecipe } from '#pattern/recipe-file/file.ts';
import draftSchema from '../../docs/schema/draft.schema.json' with { type: 'json' };
import { pinlight, useCommand } from '../support/cli.ts';

const { at } = useCommand();
const ajv = new Ajv2020({ strict: false });

const strip = { kind: 'strip', spacing: 5, angle: 45, repeats: 2, length: 3, width: 6 };
const save = (name: string, value: unknown): string => {
  writeFileSync(at(name), JSON.stringify(value));
  return at(name);
};
const recipeFile = (name: string, changes: object = {}): string =>
  save(name, { format: 'pinlight-recipe', version: 1, recipe: { ...strip, ...changes } });
const patternIn = (name: string) => {
  const read = readPattern(readFileSync(at(name), 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.trouble));
  return read.value;
};
async function result(...words: string[]) {
  const run = await pinlight(['draft', ...words, '--json']);
  expect(run.code, run.err).toBe(0);
  const value = JSON.parse(run.out);
  expect(ajv.validate(draftSchema, value), JSON.stringify(ajv.errors)).toBe(true);
  return value;
}

describe('pinlight draft', () => {
  test('--list names every recipe of the library', async () => {
    const run = await pinlight(['draft', '--list']);
    for (const { name, title } of library) expect(run.out).toMatch(new RegExp(`^${name} +${title}$`, 'm'));
    expect((await result('--list')).library.map(({ name }: { name: string }) => name)).toEqual(
      library.map(({ name }) => name),
    );
  });

  test('of a name of the library gives a pattern that keeps its recipe and says whose it is', async () => {
    const drafted = await result('plain-strip', '-o', at('plain.json'), '--maker', 'Ada Example');
    const pattern = patternIn('plain.json');
    expect(pattern.pins).toHaveLength(drafted.pins);
    expect(pattern.recipe).toEqual(library.find(({ name }) => name === 'plain-strip')!.recipe);
    expect(pattern.about).toMatchObject({ name: 'Plain strip', maker: 'Ada Example' });
  });

  test('of a recipe file says how many pins there are and how large it is', async () => {
    const run = await pinlight(['draft', recipeFile('strip.json'), '-o', at('strip-pattern.json')]);
    // 7 columns of 2.5 mm and 2 repeats of 3 spacings of 5 mm, at 45 degrees.
    expect(run.err).toMatch(/46 pins, 15 mm \(0\.591 in\) across and 30 mm \(1\.181 in\) down/);
    expect(patternIn('strip-pattern.json').pins).toHaveLength(46);
  });

  test.each<[string, string, number]>([
    ['spacing=4mm', 'spacing', 4],
    ['spacing=0,2in', 'spacing', 5.08],
    ['spacing = 1/4"', 'spacing', 6.35],
    ['angle=52,5', 'angle', 52.5],
    ['angle=60°', 'angle', 60],
    ['repeats=7', 'repeats', 7],
  ])('--set %s', async (set, figure, value) => {
    await result(recipeFile('set.json'), '--set', set, '-o', at('set-pattern.json'));
    expect(patternIn('set-pattern.json').recipe).toEqual({ ...strip, ground: 'plain', [figure]: value });
  });

  test('--set again and again, and --recipe keeps it all for the next time', async () => {
    const recipe = at('mine.json');
    const run = await pinlight([
      ...['draft', recipeFile('sets.json'), '--set', 'ground=rose', '--set', 'width=8', '--set', 'length=4'],
      ...['--recipe', recipe],
    ]);
    expect([run.code, run.out]).toEqual([0, '']);
    expect(readRecipe(readFileSync(recipe, 'utf8'))).toMatchObject({
      ok: true,
      value: { recipe: { ...strip, ground: 'rose', width: 8, length: 4 } },
    });
    expect(readFileSync(recipe, 'utf8').split('\n').length).toBeGreaterThan(10);
  });

  test('a part that is set in steps, and taken out again', async () => {
    const fans = ['--set', 'headside.kind=fans', '--set', 'headside.pins=9', '--set', 'headside.stitch=half'];
    await result('plain-strip', ...fans, '-o', at('fans.json'));
    expect(patternIn('fans.json').recipe).toMatchObject({
      headside: { kind: 'fans', pins: 9, stitch: 'half' },
    });
    await result(at('fans.json'), '--set', 'headside=none', '-o', at('plain-again.json'));
    expect(patternIn('plain-again.json').recipe).not.toHaveProperty('headside');
    expect(patternIn('plain-again.json').areas).toEqual([]);
  });

  test('a figure that cannot be met is named with its limits, and the nearest works', async () => {
    const fans = ['--set', 'headside.kind=fans', '--set', 'headside.stitch=half'];
    const words = ['draft', 'plain-strip', ...fans, '--set'];
    const run = await pinlight([...words, 'headside.pins=40']);
    expect(run.code).toBe(2);
    const [, most, nearest] =
      /headside\.pins cannot be 40: the pins would stand closer .* from 3 to (\d+)\. The nearest that works is (\d+)\. \(headside\.pins: Pins of each/.exec(
        run.err,
      )!;
    expect(nearest).toBe(most);
    expect((await pinlight([...words, `headside.pins=${nearest}`])).code).toBe(0);
    expect((await pinlight([...words, `headside.pins=${Number(most) + 1}`])).code).toBe(2);
  });

  test('--figures says what each figure is, means and can be', async () => {
    const { out } = await pinlight(['draft', 'plain-strip', '--figures', '--set', 'spacing=1in']);
    expect(out).toMatch(
      /^spacing = 25\.4 mm {2}\(a length from 0\.1 mm to 10000 mm\)\n {4}Distance between/m,
    );
    expect(out).toMatch(/^ground = plain {2}\(plain, doubled, four-pin, honeycomb or rose\)$/m);
  });

  test('a pattern drafted anew keeps what a hand did, and tells what it cannot keep', async () => {
    await result(recipeFile('again.json'), '-o', at('first.json'));
    const first = patternIn('first.json');
    const byHand = {
      ...first,
      pins: first.pins.map((pin) => (/^g(3\.3|5\.5)$/.test(pin.id) ? { ...pin, x: pin.x + 0.7 } : pin)),
    };
    const { paper: _, ...file } = byHand;
    save('edited.json', file);
    const { kept, lost, from } = await result(
      ...[at('edited.json'), '--set', 'spacing=4', '--set', 'width=4', '-o', at('second.json')],
    );
    expect([from, kept]).toEqual(['pattern', 1]);
    expect(lost).toMatchObject([{ list: 'pins', id: 'g5.5', edit: 'changed' }]);
    expect(lost[0].sentence).toMatch(/pin g5\.5 was changed, and is no longer drafted/);
    expect(patternIn('second.json').pins.find(({ id }) => id === 'g3.3')).toMatchObject({ x: 6.7, y: 6 });
    const words = await pinlight(['draft', at('edited.json'), '--set', 'width=4', '-o', at('third.json')]);
    expect(words.err).toMatch(/1 edit made by hand is kept/);
    expect(words.err).toMatch(/1 edit made by hand could not be kept/);
  });

  test('a pattern goes to standard output, and a recipe comes from standard input', async () => {
    const run = await pinlight(['draft', '-'], { stdin: readFileSync(recipeFile('stdin.json')) });
    const read = readPattern(run.out);
    expect(read.ok && read.value.pins.length).toBe(46);
  });

  test.each<[string[], RegExp]>([
    [[], /The recipe is missing. Give a name of the library/],
    [['no-such-thing'], /no recipe "no-such-thing" in the library.*plain-strip/],
    [['no-such.json'], /no such file/],
    [['plain-strip', '--set', 'spacing'], /--set "spacing" is not understood/],
    [['plain-strip', '--set', 'headside.kind=fans'], /needs headside\.pins as well.*Pins of each/],
    [['plain-strip', '--set', 'repeats=none'], /repeats cannot be "none"/],
    [['plain-strip', '--set', 'areas.7.shape=diamond'], /no figure "areas\.7\.shape"/],
    [['plain-strip', '--set', 'repeats=10000', '--set', 'length=200'], /more pins than a pattern can have/],
    [['plain-strip', '--set', 'colour=red'], /no figure "colour". It has kind, spacing, angle/],
    [['plain-strip', '--set', 'spacing.left=3'], /no figure "spacing\.left"/],
    [['plain-strip', '--set', '__proto__=3'], /no figure/],
    [['plain-strip', '--set', 'constructor.name=3'], /no figure/],
    [
      ['plain-strip', '--set', 'angle=80'],
      /angle cannot be "80". It takes a number from 30 to 75. .*footside/,
    ],
    [
      ['plain-strip', '--set', 'repeats=2.5'],
      /repeats cannot be "2\.5". It takes a whole number from 1 to 10000/,
    ],
    [['plain-strip', '--set', 'ground=clay'], /ground cannot be "clay". It takes plain, doubled, four-pin/],
    [['plain-strip', '--set', 'spacing=4 miles'], /spacing cannot be "4 miles". It takes a length/],
    [['plain-strip', '--recipe', '-'], /--recipe "-" is not understood/],
    [['plain-strip', '-o', '-', '--json'], /-o "-" is not understood/],
  ])('refuses %j in words', async (words, sentence) => {
    const run = await pinlight(['draft', ...words]);
    expect(run.code, run.out).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).toMatch(sentence);
  });

  test('a pattern without a recipe, and a file that is something else, are refused in words', async () => {
    const traced = await pinlight(['draft', save('traced.json', { pins: [] })]);
    expect(traced.code).toBe(2);
    expect(traced.err).toMatch(/keeps no recipe/);
    const other = await pinlight(['draft', save('other.json', { format: 'cake', version: 1 })]);
    expect(other.err).toMatch(/not a pattern/);
    const bad = await pinlight(['draft', recipeFile('bad.json', { angle: 12 })]);
    expect(bad.err).toMatch(/recipe\.angle is too small: the least is 30/);
    const newer = await pinlight(['draft', save('newer.json', { format: 'pinlight-recipe', version: 3 })]);
    expect(newer.err).toMatch(/version 3/);
  });

  test('a result never replaces what it is made from', async () => {
    const recipe = recipeFile('kept.json');
    for (const flag of ['-o', '--recipe'])
      expect((await pinlight(['draft', recipe, flag, recipe])).err).toMatch(/would replace/);
  });
});
