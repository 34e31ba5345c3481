import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { normal, seededRandom } from '#base/random.ts';
import { readPattern } from '#pattern/file/read.ts';
import lookSchema from '../../docs/schema/look.schema.json' with { type: 'json' };
import trueSchema from '../../docs/schema/true.schema.json' with { type: 'json' };
import { pinlight, useCommand } from '../support/cli.ts';

const { folder, at } = useCommand();
const ajv = new Ajv2020({ strict: false });

/** A ground at 45 degrees, its pins off by a hand's jitter; the pin at [4, 4] is left out. */
function ground(jitter: number, seed = 1): { x: number; y: number }[] {
  const random = seededRandom(seed);
  const pins: { x: number; y: number }[] = [];
  for (let row = 0; row < 10; row++) {
    for (let column = 0; column < 10; column++) {
      if (row === 4 && column === 4) continue;
      pins.push({
        x: 20 + 4 * column + 2 * (row % 2) + jitter * normal(random),
        y: 20 + 2 * row + jitter * normal(random),
      });
    }
  }
  return pins;
}

const save = (name: string, value: unknown): string => {
  writeFileSync(at(name), JSON.stringify(value));
  return at(name);
};

describe('pinlight true', () => {
  test('moves jittered pins on to their ground and keeps their order', async () => {
    const pins = ground(0.1);
    const run = await pinlight(['true', save('jittered.json', { pins }), '-o', at('trued.json'), '--json']);
    expect(run.code).toBe(0);
    const result = JSON.parse(run.out);
    expect(ajv.validate(trueSchema, result), JSON.stringify(ajv.errors)).toBe(true);
    expect(result.pins).toHaveLength(99);
    const trued = readPattern(readFileSync(at('trued.json'), 'utf8'));
    if (!trued.ok) throw new Error(JSON.stringify(trued.trouble));
    expect(trued.value.pins.map(({ x, y }) => ({ x, y }))).toEqual(
      result.pins.map(({ x, y }: { x: number; y: number }) => ({ x, y })),
    );
    // RMS against the ideal, which must be a third of the jitter (0.1 mm in x and in y) or less.
    const ideal = ground(0);
    const rms = Math.sqrt(
      ideal.reduce((sum, { x, y }, i) => sum + (result.pins[i].x - x) ** 2 + (result.pins[i].y - y) ** 2, 0) /
        99,
    );
    expect(rms).toBeLessThan((0.1 * Math.SQRT2) / 3);
    expect(result.missing).toHaveLength(1);
    expect(Math.hypot(result.missing[0].x - 36, result.missing[0].y - 28)).toBeLessThan(0.1);
    expect(run.err).toMatch(/1 pin seems to be missing; that is only a proposal/);
  });

  test('puts in what is missing only where it is told to', async () => {
    const name = save('gap.json', { pins: ground(0.05) });
    const asked = await pinlight(['true', name, '--add-missing']);
    expect(JSON.parse(asked.out).pins).toHaveLength(100);
    const one = await pinlight(['true', name, '--take', 'missing-1']);
    const taken = JSON.parse(one.out).pins;
    expect(taken).toHaveLength(100);
    // --take takes nothing else: the given pins stay where they were.
    expect(taken.slice(0, 99).map(({ x }: { x: number }) => x)).toEqual(
      JSON.parse(readFileSync(name, 'utf8')).pins.map(({ x }: { x: number }) => Math.round(x * 1000) / 1000),
    );
  });

  test('leaves what it is told to leave', async () => {
    const name = save('left.json', { pins: ground(0.05) });
    const all = JSON.parse((await pinlight(['true', name, '--json'])).out);
    const ids: string = all.structures.map(({ id }: { id: string }) => id).join(',');
    const left = JSON.parse((await pinlight(['true', name, '--json', '--leave', ids])).out);
    expect(all.moved.pins).toBeGreaterThan(90);
    expect(left.moved).toEqual({ pins: 0, farthest: 0 });
    const unknown = await pinlight(['true', name, '--leave', 'lattice-99']);
    expect(unknown.code).toBe(2);
    expect(unknown.err).toMatch(/no part "lattice-99"/);
  });

  test('--known sets the size right, and proves the scale', async () => {
    const name = save('small.json', { pins: ground(0).map(({ x, y }) => ({ x: x * 0.97, y: y * 0.97 })) });
    const run = await pinlight(['true', name, '--known', '0,9=36']);
    expect(run.code, run.err).toBe(0);
    const pattern = JSON.parse(run.out);
    expect(pattern.pins[9].x - pattern.pins[0].x).toBeCloseTo(36, 2);
    expect(pattern.scale).toMatchObject({ from: 'span', length: 36 });
    expect((await pinlight(['true', name, '--known', '0,1234=36'])).err).toMatch(/no pin "1234"/);
    expect((await pinlight(['true', name, '--known', '0,9'])).err).toMatch(/--known "0,9" is not understood/);
  });

  test('exact patterns come back as they were', async () => {
    const pins = ground(0);
    const run = await pinlight(['true', '-', '--json'], { stdin: JSON.stringify({ pins }) });
    expect(JSON.parse(run.out).moved).toEqual({ pins: 0, farthest: 0 });
  });
});

describe('pinlight look', () => {
  test('a fault ends with code 1 and says where it is', async () => {
    const pins = [...ground(0), { x: 20.2, y: 20 }];
    const run = await pinlight(['look', save('doubled.json', { pins }), '--json']);
    expect(run.code).toBe(1);
    const result = JSON.parse(run.out);
    expect(ajv.validate(lookSchema, result), JSON.stringify(ajv.errors)).toBe(true);
    expect(result.faults).toBeGreaterThan(0);
    expect(result.findings[0].severity).toBe('fault');
    expect(result.findings[0].pins).toContain(99);
  });

  test('words to read go to standard output, or to a file', async () => {
    const name = save('gap-to-read.json', { pins: ground(0) });
    const run = await pinlight(['look', name]);
    expect(run.code).toBe(0);
    expect(run.out).toMatch(/gap/);
    await pinlight(['look', name, '-o', at('findings.txt')]);
    expect(readFileSync(at('findings.txt'), 'utf8')).toBe(run.out);
  });
});

describe('manners', () => {
  const pins = ground(0.05);

  test('verbs can be joined by pipes', async () => {
    const first = await pinlight(['true', '-'], { stdin: JSON.stringify({ pins }) });
    const second = await pinlight(['look', '-', '--json'], { stdin: first.out });
    expect(JSON.parse(second.out).unit).toBe('mm');
  });

  test('same input, same bytes', async () => {
    const name = save('same.json', { pins });
    const runs = await Promise.all([1, 2].map(() => pinlight(['true', name, '--json'])));
    expect(runs[0]!.out).toBe(runs[1]!.out);
  });

  test('a result never replaces what it is made from, not even through a link', async () => {
    const name = save('input.json', { pins });
    symlinkSync(name, at('link.json'));
    for (const output of [name, at('link.json')]) {
      const run = await pinlight(['true', name, '-o', output]);
      expect(run.code).toBe(2);
      expect(run.err).toMatch(/would replace what it is made from/);
    }
    expect(JSON.parse(readFileSync(name, 'utf8'))).toEqual({ pins });
  });

  test('a result that cannot be written leaves nothing behind', async () => {
    const name = save('kept.json', { pins });
    const before = readdirSync(folder).sort();
    expect((await pinlight(['true', name, '-o', at('nowhere/trued.json')])).err).toMatch(/no such folder/);
    expect((await pinlight(['true', name, '-o', folder])).err).toMatch(/a folder/);
    expect(readdirSync(folder).sort()).toEqual(before);
  });

  test('a reader that goes away is no fault', async () => {
    // Far more text than a pipe holds.
    const many = Array.from({ length: 5000 }, (_, i) => ({
      x: 2 * (i % 50) + (Math.floor(i / 50) % 2),
      y: Math.floor(i / 50),
    }));
    const script = '"$0" dist/cli/pinlight.mjs true "$1" 2>/dev/null | head -c 10; echo " $PIPESTATUS"';
    const run = spawnSync('bash', ['-c', script, process.execPath, save('long.json', { pins: many })], {
      cwd: fileURLToPath(new URL('../..', import.meta.url)),
      encoding: 'utf8',
    });
    expect(run.stdout).toMatch(/ 0\n$/);
  });

  test('help and version end with 0, a wrong word with 2 and a hint', async () => {
    expect((await pinlight(['--help'])).code).toBe(0);
    expect((await pinlight(['--version'])).out).toMatch(/^\d+\.\d+\.\d+\n$/);
    const wrong = await pinlight(['lok', 'x.json']);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toMatch(/Did you mean look\?/);
    expect((await pinlight(['look', 'x.json', '--bogus', '3'])).code).toBe(2);
    expect((await pinlight([])).code).toBe(2);
  });
});
