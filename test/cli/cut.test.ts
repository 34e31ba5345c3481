import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import cutSchema from '../../docs/schema/cut.schema.json' with { type: 'json' };
import { pinlight, useCommand } from '../support/cli.ts';

const { folder, at } = useCommand();
const ajv = new Ajv2020({ strict: false });

const pins = Array.from({ length: 60 }, (_, k) => ({
  x: 5 + 4 * (k % 6) + 2 * (Math.floor(k / 6) % 2),
  y: 5 + 2 * Math.floor(k / 6),
}));

const save = (name: string, value: unknown): string => {
  writeFileSync(at(name), JSON.stringify(value));
  return at(name);
};
const pattern = (): string => save('pattern.json', { pins });

describe('pinlight cut', () => {
  test('writes the file, says how to check it, and cautions', async () => {
    const run = await pinlight(['cut', pattern(), '-o', at('card.dxf'), '--hole', '0,6', '--json']);
    expect(run.code, run.err).toBe(0);
    const result = JSON.parse(run.out);
    expect(ajv.validate(cutSchema, result), JSON.stringify(ajv.errors)).toBe(true);
    expect([result.holes, result.hole, result.drawn, result.width, result.height]).toEqual([
      60, 0.6, 0.6, 22.6, 18.6,
    ]);
    expect(result.files[0].file).toBe(at('card.dxf'));
    expect(readFileSync(at('card.dxf'), 'utf8').match(/\r\nCIRCLE\r\n/g)).toHaveLength(60);
    for (const words of [/unattended/, /extraction/, /NO PVC/, /hydrogen chloride/, /manual/, /compensate/])
      expect(run.err).toMatch(words);
    expect(run.err).toMatch(
      /should measure 22\.6 mm \(0\.89 in\) by 18\.6 mm \(0\.732 in\), 60 holes, the first at 2\.3 mm, 0\.3 mm/,
    );
  });

  test('the same file whatever the language of the machine', async () => {
    const files = [];
    for (const language of ['de_DE.UTF-8', 'fr_FR.UTF-8']) {
      process.env.LC_ALL = language;
      await pinlight(['cut', pattern(), '-o', at('local.svg'), '--card', '--kerf', '0.1']);
      files.push(readFileSync(at('local.svg'), 'utf8'));
    }
    delete process.env.LC_ALL;
    expect(files[0]).toBe(files[1]);
    expect(files[0]).not.toMatch(/\d,\d/);
  });

  test('a preset is read, and flags go before it', async () => {
    const preset = save('shop.json', {
      format: 'pinlight-cutting',
      version: 1,
      name: 'Shop',
      kerf: 0.2,
      bed: { width: 10, height: 10 },
    });
    const read = await pinlight([
      'cut',
      pattern(),
      '-o',
      at('a.dxf'),
      '--hole',
      '0.6',
      '--preset',
      preset,
      '--json',
    ]);
    expect(JSON.parse(read.out).drawn).toBe(0.4);
    expect(read.err).not.toMatch(/compensate/);
    expect(read.err).toMatch(/larger than the bed \(10 mm by 10 mm\).*--split/);
    const over = await pinlight([
      'cut',
      pattern(),
      '-o',
      at('a.dxf'),
      '--hole',
      '0.6',
      '--preset',
      preset,
      '--kerf',
      '0.1',
      '--json',
    ]);
    expect(JSON.parse(over.out).drawn).toBe(0.5);
    const wrong = await pinlight([
      'cut',
      pattern(),
      '-o',
      at('a.dxf'),
      '--preset',
      save('wrong.json', {
        format: 'pinlight-cutting',
        version: 1,
        name: 'Shop',
        bed: { width: 'wide', height: 10 },
      }),
    ]);
    expect([wrong.code, wrong.err]).toEqual([
      2,
      expect.stringMatching(/not a preset for cutting: look at "bed\.width"/),
    ]);
  });

  test('the preset among the examples is one', async () => {
    const preset = fileURLToPath(new URL('../../examples/quayside-workshop.json', import.meta.url));
    const run = await pinlight([
      'cut',
      pattern(),
      '-o',
      at('a.svg'),
      '--hole',
      '0.6',
      '--preset',
      preset,
      '--json',
    ]);
    expect([run.code, JSON.parse(run.out).kerf]).toEqual([0, 0.12]);
  });

  test('names with the unit and the size in them', async () => {
    const run = await pinlight([
      'cut',
      pattern(),
      '-o',
      at('sized.dxf'),
      '--hole',
      '0.6',
      '--card',
      '--sized',
    ]);
    expect(run.code).toBe(0);
    expect(existsSync(at('sized-mm-43x39.dxf'))).toBe(true);
  });
});

describe('bad input gets a sentence', () => {
  test.each([
    ['a pattern in pixels', { format: 'pinlight-pattern', version: 1, unit: 'px', pins }, [], 2, /in pixels/],
    ['no pins', { pins: [] }, [], 2, /no pins/],
    ['a hole larger than the spacing', { pins }, ['--hole', '3'], 2, /larger than the spacing of the pins/],
    ['a negative kerf', { pins }, ['--kerf', '-0.1'], 2, /--kerf/],
    ['an absurd kerf', { pins }, ['--kerf', '20'], 2, /A kerf of 20 .* from 0 to 2 mm/],
    ['an absurd hole', { pins }, ['--hole', '50'], 2, /A hole of 50 /],
    ['a kerf larger than the hole', { pins }, ['--hole', '0.2', '--kerf', '0.3'], 0, /mere point/],
    ['a pattern larger than the bed', { pins }, ['--bed', '20x10'], 0, /larger than the bed .*--split/],
    ['holes that coincide', { pins: [...pins, pins[3]] }, [], 0, /1 pin coincides/],
    [
      'holes that overlap',
      { pins: [...pins, { x: 5.3, y: 5 }] },
      ['--hole', '0.6'],
      1,
      /1 pair of holes run into each other: p1 with p61/,
    ],
    [
      'holes near each other',
      { pins: [...pins, { x: 6, y: 5 }] },
      ['--hole', '0.6'],
      0,
      /less than 0\.5 mm of card is left \(thinnest: 0\.4 mm/,
    ],
    ['a bed that is none', { pins }, ['--bed', 'large'], 2, /--bed "large" is not understood/],
    ['tabs without an outline', { pins }, ['--tabs', '4'], 2, /--tabs/],
  ])('%s', async (_, input, flags, code, words) => {
    const before = readdirSync(folder).length;
    const run = await pinlight(['cut', save('bad.json', input), '-o', at('bad.dxf'), ...flags]);
    expect(run.err).toMatch(words);
    expect(run.code).toBe(code);
    if (code === 2) expect(readdirSync(folder).length).toBeLessThanOrEqual(before + 1);
  });

  test('a file of an unknown kind', async () => {
    const run = await pinlight(['cut', pattern(), '-o', at('card.doc')]);
    expect([run.code, run.err]).toEqual([2, expect.stringMatching(/ends in \.dxf, \.svg or \.gcode/)]);
  });
});
