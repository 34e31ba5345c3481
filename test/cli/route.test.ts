import { writeFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import routeSchema from '../../docs/schema/route.schema.json' with { type: 'json' };
import { pinlight, useCommand } from '../support/cli.ts';

const { at } = useCommand();
const ajv = new Ajv2020({ strict: false });

const pins = Array.from({ length: 200 }, (_, index) => ({
  x: 20 + 4 * (index % 10) + 2 * (Math.floor(index / 10) % 2),
  y: 20 + 2 * Math.floor(index / 10),
}));

const save = (name: string, value: unknown): string => {
  writeFileSync(at(name), JSON.stringify(value));
  return at(name);
};

async function route(...options: string[]) {
  const run = await pinlight(['route', save('ground.json', { pins }), ...options, '--json']);
  expect(run.code, run.err).toBe(0);
  const result = JSON.parse(run.out);
  expect(ajv.validate(routeSchema, result), JSON.stringify(ajv.errors)).toBe(true);
  return result;
}

describe('pinlight route', () => {
  test('--machine gives a closed tour, and its length is true', async () => {
    const { order, length, closed, spread } = await route('--machine');
    expect(order.toSorted((a: number, b: number) => a - b)).toEqual([...pins.keys()]);
    expect(closed).toBe(true);
    expect(spread).toBeNull();
    expect(length).toBeCloseTo(closedLength(order), 2);
    expect(length).toBeGreaterThanOrEqual(200 * Math.SQRT2 * 2 - 0.001);
    expect(length).toBeLessThan(200 * Math.SQRT2 * 2 * 1.05);
  });

  test('--machine --spread keeps its distance', async () => {
    expect((await route('--machine', '--spread')).spread).toEqual({ distance: 5, tooNear: 0 });
    const { nearest, spread } = await route('--machine', '--spread', '8 mm');
    expect(spread).toEqual({ distance: 8, tooNear: 0 });
    expect(nearest).toBeGreaterThanOrEqual(8);
  });

  test('--hand gives passes along a ruler, numbered, with every pin in one of them', async () => {
    const { passes, holes, settings, waxings, minutes } = await route('--hand');
    const all = passes.flatMap(({ order }: { order: number[] }) => order);
    expect(all.toSorted((a: number, b: number) => a - b)).toEqual([...pins.keys()]);
    const numbers = passes.flatMap(({ setting }: { setting: number | null }) => setting ?? []);
    expect(numbers).toEqual(Array.from({ length: settings }, (_, one) => one + 1));
    expect([holes, waxings]).toEqual([200, 50]);
    expect(minutes).toBeGreaterThan(0);
  });

  test('says it in words, with pins counted from 1', async () => {
    const name = save('line.json', { pins: [0, 3, 6, 9, 12].map((x) => ({ x, y: 0 })) });
    const hand = await pinlight(['route', name, '--hand']);
    expect(hand.out).toMatch(/^5 holes, 1 ruler setting, 2 waxings/);
    expect(hand.out).toMatch(/\[ \] .*ruler 1: 5 holes, (1 2 3 4 5|5 4 3 2 1)/);
    const machine = await pinlight(['route', name, '--machine']);
    expect(machine.out).toMatch(/^5 holes, 24 mm of way there and back/);
    expect(machine.out).toMatch(/\n1( [2-5]){4}\n$/);
    const near = await pinlight(['route', name, '--machine', '--spread', '50']);
    expect(near.out).toMatch(/5 steps are shorter than that, the shortest 3 mm|the holes stand too close/);
  });

  test('of no pins is no trouble', async () => {
    const name = save('none.json', { pins: [] });
    expect(JSON.parse((await pinlight(['route', name, '--machine', '--json'])).out).order).toEqual([]);
    expect(JSON.parse((await pinlight(['route', name, '--hand', '--json'])).out).passes).toEqual([]);
    expect((await pinlight(['route', name, '--machine', '--spread'])).out).toMatch(/no hole/);
  });

  test.each([
    [[], /--hand or --machine is missing/],
    [['--hand', '--machine'], /cannot be used with/],
    [['--hand', '--spread'], /cannot be used with/],
    [['--machine', '--spread', 'wide'], /--spread "wide" is not understood/],
    [['--machine', '--spread', '-3'], /--spread/],
  ])('refuses %j in words', async (options, words) => {
    const run = await pinlight(['route', save('ground.json', { pins }), ...options]);
    expect(run.code).toBe(2);
    expect(run.out).toBe('');
    expect(run.err).toMatch(words);
  });

  test('keeps no distance on a pattern of unknown scale', async () => {
    const run = await pinlight(['route', save('px.json', { unit: 'px', pins }), '--machine', '--spread']);
    expect(run.code, run.out).toBe(2);
    expect(run.err).toMatch(/scale of this pattern is not known/);
  });
});

const closedLength = (order: readonly number[]): number =>
  order.reduce((sum, pin, i) => {
    const [one, next] = [pins[pin]!, pins[order[(i + 1) % order.length]!]!];
    return sum + Math.hypot(next.x - one.x, next.y - one.y);
  }, 0);
