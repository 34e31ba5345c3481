import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { readContainer } from '#pattern/container/container.ts';
import printSchema from '../../docs/schema/print.schema.json' with { type: 'json' };
import readySchema from '../../docs/schema/ready.schema.json' with { type: 'json' };
import traceSchema from '../../docs/schema/trace.schema.json' with { type: 'json' };
import { pinlight, type Run, useCommand } from '../support/cli.ts';
import { rosehip } from '../support/examples/rosehip.ts';

const { folder, at } = useCommand();
const ajv = new Ajv2020({ strict: false });
const example = fileURLToPath(new URL('../../examples/rosehip-edging.jpg', import.meta.url));

interface Hole {
  readonly x: number;
  readonly y: number;
  readonly diameter: number | null;
  readonly confidence: number;
}

const holesOf = (run: Run): Hole[] => {
  expect(run.code, run.err).toBe(0);
  return JSON.parse(run.out).holes;
};

/** How many of `holes` have one of `others` within `reach`, one to one. */
function matched(
  holes: readonly { x: number; y: number }[],
  others: readonly { x: number; y: number }[],
  reach: number,
) {
  const free = new Set(others);
  let pairs = 0;
  for (const hole of holes) {
    const near = [...free].find((other) => Math.hypot(other.x - hole.x, other.y - hole.y) <= reach);
    if (near === undefined) continue;
    free.delete(near);
    pairs++;
  }
  return pairs;
}

describe('pinlight trace', () => {
  let traced: Run;
  beforeAll(async () => {
    traced = await pinlight(['trace', example, '--json', '-o', at('rosehip.pinlight')]);
  });

  test('finds the dots of the example where its recipe put them', () => {
    const truth = rosehip().scan.truth.holes.map(({ column, row }) => ({ x: column, y: row }));
    const sure = holesOf(traced).filter(({ confidence }) => confidence >= 0.5);
    // 0.35 mm at 300 dots an inch.
    const pairs = matched(truth, sure, 4.1);
    const f1 = (2 * pairs) / (truth.length + sure.length);
    expect(f1).toBeGreaterThanOrEqual(0.985);
  });

  test('says it in the published form, in pixels and in millimetres', () => {
    const result = JSON.parse(traced.out);
    expect(ajv.validate(traceSchema, result), JSON.stringify(ajv.errors)).toBe(true);
    expect(result).toMatchObject({ unit: 'mm', dpi: 300, scaleFrom: 'file', width: 1748, height: 2480 });
    expect(result.pins).toHaveLength(result.holes.length);
    for (const [index, { x }] of result.holes.entries()) {
      expect(result.pins[index].x).toBeCloseTo((x * 25.4) / 300, 2);
    }
    // The recipe draws dots of 0.62 mm.
    const sizes = result.holes.map(({ diameter }: Hole) => diameter).sort((a: number, b: number) => a - b);
    expect(sizes[Math.floor(sizes.length / 2)]).toBeGreaterThan(0.55);
    expect(sizes[Math.floor(sizes.length / 2)]).toBeLessThan(0.69);
  });

  test('keeps the very picture with the pattern', () => {
    const file = readContainer(new Uint8Array(readFileSync(at('rosehip.pinlight'))));
    if (!file.ok) throw new Error(JSON.stringify(file.trouble));
    const { paper, sheet } = file.value.pattern;
    expect(Buffer.from(file.value.pictures.get(paper!.entry)!).equals(readFileSync(example))).toBe(true);
    expect(sheet!.width).toBeCloseTo(148, 1);
  });

  test('a picture laid on its side by its orientation gives the same holes, whatever its format', async () => {
    const upright = holesOf(traced);
    for (const format of ['png', 'tiff', 'webp'] as const) {
      const bytes = await sharp(example)
        .rotate(90)
        .withMetadata({ orientation: 8, density: 300 })
        .toFormat(format, { quality: 100, lossless: true })
        .toBuffer();
      writeFileSync(at(`side.${format}`), bytes);
      const holes = holesOf(await pinlight(['trace', at(`side.${format}`), '--json']));
      expect(matched(upright, holes, 0.2), format).toBe(upright.length);
    }
  }, 120_000);

  test('no scale: pixels are kept, and it says so', async () => {
    const bytes = await sharp(example).jpeg({ quality: 95 }).withMetadata({ density: 72 }).toBuffer();
    const run = await pinlight(['trace', '-', '--json', '-o', at('px.json')], { stdin: bytes });
    const result = JSON.parse(run.out);
    expect(result).toMatchObject({ unit: 'px', dpi: null, scaleFrom: 'none' });
    expect(result.holes.length).toBeGreaterThan(500);
    expect(result.holes.every(({ diameter }: Hole) => diameter === null)).toBe(true);
    expect(run.err).toMatch(/72 dots an inch.*nobody measured/i);
    expect(run.err).toMatch(/--span/);
    expect(JSON.parse(readFileSync(at('px.json'), 'utf8'))).toMatchObject({
      unit: 'px',
      scale: { from: 'none' },
    });
    const print = await pinlight([
      'print',
      at('px.json'),
      '-o',
      at('px.pdf'),
      '--way',
      'film',
      '--paper',
      'A4',
    ]);
    expect(print.code).toBe(2);
    expect(print.err).toMatch(/Nobody knows how large/);
    const ready = await pinlight(['ready', '-', '-o', at('px-ready')], { stdin: bytes });
    expect(ready.code).toBe(2);
    expect(readdirSync(folder)).not.toContain('px-ready');
  });

  test('--dpi and --span set the scale, and not both', async () => {
    const byDpi = JSON.parse((await pinlight(['trace', example, '--json', '--dpi', '600'])).out);
    expect(byDpi).toMatchObject({ dpi: 600, scaleFrom: 'given' });
    const bySpan = JSON.parse(
      (await pinlight(['trace', example, '--json', '--span', '100,200,1281.102,200=100mm'])).out,
    );
    expect(bySpan.scaleFrom).toBe('span');
    expect(bySpan.dpi).toBeCloseTo(300, 2);
    const inches = JSON.parse(
      (await pinlight(['trace', example, '--json', '--span', '0,0,600,800=3 1/3 in'])).out,
    );
    expect(inches.dpi).toBeCloseTo(300, 6);
    for (const [args, words] of [
      [['--dpi', '300', '--span', '0,0,100,0=10'], /Both --dpi and --span/],
      [['--span', '0,0,100=10'], /--span "0,0,100=10" is not understood/],
      [['--span', '0,0,10,0=10'], /10 dots apart/],
      [['--dpi', 'fine'], /--dpi "fine" is not understood/],
      [['--dpi', '3'], /no scanner or camera makes/],
      [['--json', '-o', '-'], /--json prints goes to standard output/],
    ] as const) {
      const run = await pinlight(['trace', example, ...args]);
      expect(run.code).toBe(2);
      expect(run.err).toMatch(words);
      expect(run.out).toBe('');
    }
  }, 120_000);
});

describe('pinlight print', () => {
  test('the same bytes each time, with every sheet named', async () => {
    await pinlight(['trace', example, '-o', at('print.json')]);
    const args = ['print', at('print.json'), '--way', 'through', '--paper', 'a4', '--json'];
    const [one, other] = await Promise.all(
      ['one', 'other'].map((name) => pinlight([...args, '-o', at(`${name}.pdf`)])),
    );
    expect(one!.code, one!.err).toBe(0);
    expect(readFileSync(at('one.pdf')).equals(readFileSync(at('other.pdf')))).toBe(true);
    expect(readFileSync(at('one.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    const result = JSON.parse(other!.out);
    expect(ajv.validate(printSchema, result), JSON.stringify(ajv.errors)).toBe(true);
    expect(result.sheets.map(({ kind }: { kind: string }) => kind)).toEqual([
      'dots',
      'marking-guide',
      'pricking-guide',
    ]);
    const piped = await pinlight(['print', '-', '-o', '-', '--way', 'through', '--paper', 'A4'], {
      stdin: readFileSync(at('print.json')),
    });
    expect(piped.bytes.equals(readFileSync(at('one.pdf')))).toBe(true);
  });

  test('PNG and SVG of a sheet have the size of its paper', async () => {
    await pinlight(['trace', example, '-o', at('size.json')]);
    const args = ['print', at('size.json'), '--way', 'film', '--paper', 'Letter', '--only', 'A1'];
    await pinlight([...args, '-o', at('sheet.png'), '--dpi', '254', '--preview', at('film.png')]);
    const sheet = await sharp(at('sheet.png')).metadata();
    // 215.9 by 279.4 mm at 254 dots an inch, 10 a millimetre.
    expect([sheet.width, sheet.height, Math.round(sheet.density ?? 0)]).toEqual([2159, 2794, 254]);
    expect((await sharp(at('film.png')).stats()).isOpaque).toBe(true);
    await pinlight([...args, '-o', at('sheet.svg')]);
    expect(readFileSync(at('sheet.svg'), 'utf8')).toMatch(
      /width="215\.9mm" height="279\.4mm" viewBox="0 0 215\.9 279\.4"/,
    );
  });

  test('asks for what nobody can guess', async () => {
    await pinlight(['trace', example, '-o', at('ask.json')]);
    for (const [args, words] of [
      [['-o', at('x.pdf'), '--way', 'film'], /--paper is missing/],
      [['-o', at('x.pdf'), '--paper', 'A4'], /--way is missing/],
      [['--way', 'film', '--paper', 'A4'], /-o is missing/],
      [
        ['-o', at('x.pdf'), '--way', 'glue', '--paper', 'A4'],
        /"glue" is not understood\. Write through or film/,
      ],
      [['-o', at('x.pdf'), '--way', 'film', '--paper', 'A44'], /"A44" is not understood/],
      [['-o', at('x.pdf'), '--way', 'film', '--paper', 'A7'], /too small/],
      [['-o', at('x.pdf'), '--way', 'film', '--paper', 'A4', '--only', 'Z9'], /no sheet Z9/],
    ] as const) {
      const run = await pinlight(['print', at('ask.json'), ...args]);
      expect(run.code).toBe(2);
      expect(run.err).toMatch(words);
    }
    expect(readdirSync(folder)).not.toContain('x.pdf');
  }, 120_000);
});

describe('pinlight ready', () => {
  test('makes the whole folder, anew where it is there already, and never over what is not its own', async () => {
    const args = ['ready', example, '-o', at('ready'), '--maker', 'Ottilie Brandwijk', '--json'];
    const first = await pinlight(args);
    expect(first.code, first.err).toBe(0);
    const result = JSON.parse(first.out);
    expect(ajv.validate(readySchema, result), JSON.stringify(ajv.errors)).toBe(true);
    const names = readdirSync(at('ready')).sort();
    expect(names).toEqual([...result.files].sort());
    const before = names.map((name) => readFileSync(join(at('ready'), name)));
    expect(readFileSync(at('ready/01-read-me-first.txt'), 'utf8')).toMatch(/WHAT TO DO NEXT\n\[ \]/);

    expect((await pinlight(args)).code).toBe(0);
    names.forEach((name, index) => {
      expect(readFileSync(join(at('ready'), name)).equals(before[index]!), name).toBe(true);
    });

    writeFileSync(at('ready/my own notes.txt'), 'wind 32 pairs');
    const refused = await pinlight(args);
    expect(refused.code).toBe(2);
    expect(refused.err).toMatch(/my own notes\.txt.*would be lost/);
    expect(readFileSync(at('ready/my own notes.txt'), 'utf8')).toBe('wind 32 pairs');
    expect(readdirSync(folder).filter((name) => name.includes('.tmp'))).toEqual([]);
  }, 120_000);
});
