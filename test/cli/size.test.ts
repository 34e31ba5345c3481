import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import sizeSchema from '../../docs/schema/size.schema.json' with { type: 'json' };
import { pinlight, useCommand } from '../support/cli.ts';

const { at } = useCommand();
const ajv = new Ajv2020({ strict: false });
const example = (name: string) => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));
const rosehip = example('rosehip-edging.json');
const threads = example('threads.json');

async function size(...args: string[]) {
  const run = await pinlight(['size', ...args, '--json']);
  expect(run.code, run.err).toBe(0);
  const result = JSON.parse(run.out);
  expect(ajv.validate(sizeSchema, result), JSON.stringify(ajv.errors)).toBe(true);
  return result;
}

describe('pinlight size', () => {
  test('of a thread alone says its thickness, its wraps and its other numbers', async () => {
    const { out, code } = await pinlight(['size', '--thread', 'NeL 80/2', '--wraps', '30/cm']);
    expect(code).toBe(0);
    expect(out).toContain('30 wraps a cm (76 an inch), as you counted them');
    expect(out).toContain('48.4/2 Nm');
    expect(out).toContain('4 mm (0.157 in)');
  });

  test('takes wraps an inch, and a comma', async () => {
    const [inch, comma] = [await size('--wraps', '76.2/in'), await size('--wraps', '30,0')];
    expect(inch.threads[0].wrapsPerCm).toBe(30);
    expect(comma.threads[0].wrapsPerCm).toBe(30);
  });

  test('--to-spacing, --scale and -o write a pattern of that size, exactly', async () => {
    const { factor, copies } = await size(rosehip, '--to-spacing', '4mm', '-o', at('four.json'));
    expect([factor, copies.percents]).toEqual([0.8, [80]]);
    const { before } = await size(at('four.json'));
    expect(before.footsideSpacing).toBe(4);
    const [from, to] = [rosehip, at('four.json')].map((file) => JSON.parse(readFileSync(file, 'utf8')));
    expect(to.pins).toHaveLength(from.pins.length);
    to.pins.forEach(({ x }: { x: number }, k: number) => {
      expect(Math.abs(x - 0.8 * from.pins[k].x)).toBeLessThan(0.00051);
    });
    expect((await size(rosehip, '--scale', '71 %')).factor).toBe(0.71);
    expect((await size(rosehip, '--to-spacing', '0.25in')).after.footsideSpacing).toBe(6.35);
  });

  test('--fit-roller, --fit-cloth, --fit-round and --fit-length weigh whole repeats', async () => {
    const roller = await size(rosehip, '--fit-roller', '478mm');
    const taken = roller.repeats.filter((one: { taken: boolean }) => one.taken);
    expect(taken).toHaveLength(1);
    expect(taken[0].counts).toEqual([12]);
    expect(roller.repeats.length).toBeGreaterThan(2);
    const cloth = await size(rosehip, '--fit-cloth', '11x11in', '--corner', '40mm');
    expect(cloth.repeats.find((one: { taken: boolean }) => one.taken).counts).toEqual([6]);
    const chosen = await size(rosehip, '--fit-length', '300mm', '--repeats', '8', '--limit', '7%');
    expect(chosen.factor).toBeCloseTo(300 / 320, 6);
    expect((await size(rosehip, '--fit-round', '150mm')).factor).toBeCloseTo((Math.PI * 150) / 480, 6);
  });

  test('--table writes two sheets to print, the same bytes each time', async () => {
    const args = ['size', rosehip, '--threads', threads, '--paper', 'A4', '--table'];
    expect((await pinlight([...args, at('one.pdf')])).code).toBe(0);
    expect((await pinlight([...args, at('two.pdf')])).code).toBe(0);
    const [one, two] = [readFileSync(at('one.pdf')), readFileSync(at('two.pdf'))];
    expect(one.subarray(0, 5).toString()).toBe('%PDF-');
    expect(one.equals(two)).toBe(true);
    expect(one.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(2);
  });
});

describe('refuses, and says what to do', () => {
  writeFileSync(at('px.json'), JSON.stringify({ unit: 'px', pins: [{ x: 0, y: 0 }] }));
  writeFileSync(
    at('bare.json'),
    JSON.stringify({
      pins: [
        { x: 0, y: 0 },
        { x: 9, y: 1 },
      ],
    }),
  );
  writeFileSync(
    at('bad-threads.json'),
    '{"format":"pinlight-threads","version":1,"threads":[{"name":"x","fibre":"linen"}]}',
  );

  test.each([
    [[], /A pattern or a thread is missing/],
    [['--thread', '80/2'], /does not say in which system/],
    [['--thread', 'Nm 60/2'], /--fibre is missing/],
    [['--wraps', 'many'], /such as 28\/cm/],
    [[rosehip, '--scale', '71%', '--to-spacing', '4mm'], /only one of/],
    [[rosehip, '--fit-length', '50mm'], /No whole number of repeats fits within 5 %/],
    [[rosehip, '--fit-cloth', '280'.repeat(3).concat('x')], /its sides, such as/],
    [[rosehip, '--by', 'ease', '--fit-length', '300mm'], /only corners can be eased/],
    [[rosehip, '--copier', '71%'], /such as 50-200%/],
    [[rosehip, '--to-thread'], /No thread was given/],
    [[at('px.json'), '--scale', '50%'], /Nobody knows how large/],
    [[at('bare.json'), '--to-spacing', '4mm'], /--spacing 4mm/],
    [[at('bare.json'), '--fit-length', '300mm'], /--repeat 24mm/],
    [['--threads', at('bad-threads.json')], /neither a count nor measured wraps/],
    [['--threads', rosehip], /not a list of threads/],
    [[rosehip, '--threads', threads, '--table', at('t.pdf')], /--paper is missing/],
    [['--wraps', '28', '-o', at('t.json')], /a pattern to size as well/],
  ])('%j', async (args, words) => {
    const { code, err, out } = await pinlight(['size', ...args]);
    expect(err).toMatch(words);
    expect([code, out]).toEqual([2, '']);
  });
});
