import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fitOf,
  spacingForThread,
  threadForSpacing,
  threadTable,
  usualWraps,
  wrapsInGap,
} from '#craft/size/grid.ts';
import { eitherHabit, type Thread, threadOf } from '#craft/size/thread.ts';
import type { ThreadEntry } from '#pattern/threads/thread-list.ts';

function thread(entry: ThreadEntry): Thread {
  const made = threadOf(entry);
  if (!made.ok) throw new Error(JSON.stringify(made.trouble));
  return made.value;
}

const linen = thread({ name: 'linen', fibre: 'linen', count: 'NeL 80/2', wrapsPerCm: 30 });

describe('thread and grid', () => {
  test('twelve wraps of a thread of 30 to the centimetre fill a gap of 4 mm', () => {
    expect(wrapsInGap(linen, 4)).toBeCloseTo(12, 12);
    expect(spacingForThread(linen, usualWraps.torchon)).toBeCloseTo(4, 12);
  });

  test('point grounds take fewer wraps than Torchon, heavy cloth more', () => {
    expect(usualWraps['point-ground']).toBeLessThan(usualWraps.torchon);
    expect(usualWraps['heavy-cloth']).toBeGreaterThan(usualWraps.torchon);
  });

  test('the thread that a spacing asks for fills its gap, whatever the fibre (seed 3)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.integer({ min: 6, max: 20 }),
        (spacing, wraps) => {
          const wanted = threadForSpacing(spacing, wraps, 'cotton');
          const made = thread({ name: 'made', fibre: 'cotton', count: `${wanted.tex.toFixed(6)} tex` });
          expect(wrapsInGap(made, spacing)).toBeCloseTo(wraps, 4);
        },
      ),
      { seed: 3 },
    );
  });

  // textileschool.com: when a pattern is made larger or smaller the thread's diameter must change in the same ratio.
  test('a pattern at 150 % asks for a thread half as thick again', () => {
    const small = threadForSpacing(4, 12, 'linen');
    const large = threadForSpacing(6, 12, 'linen');
    expect(large.wrapped / small.wrapped).toBeCloseTo(1.5, 12);
    expect(large.tex / small.tex).toBeCloseTo(2.25, 12);
  });

  test('more wraps than wanted: the thread is thin', () => {
    expect([12, 13.2, 13.3, 14.5, 10.9, 10.7, 9].map((wraps) => fitOf(wraps, 12))).toEqual([
      'suits',
      'suits',
      'rather-thin',
      'thin',
      'suits',
      'rather-thick',
      'thick',
    ]);
  });
});

describe('which threads suit', () => {
  const fine = thread({ name: 'fine', fibre: 'linen', wrapsPerCm: 40 });
  const thick = thread({ name: 'thick', fibre: 'linen', wrapsPerCm: 20 });

  test('the one nearest to right comes first, and each says at which scale it is right', () => {
    const rows = threadTable([thick, fine, linen], 4, 12, [1, 1.41]);
    expect(rows.map((row) => row.thread.name)).toEqual(['linen', 'fine', 'thick']);
    expect(rows.map((row) => row.scale.toFixed(3))).toEqual(['1.000', '0.750', '1.500']);
    expect(rows[2]!.at.map(({ fit }) => fit)).toEqual(['thick', 'suits']);
    for (const row of rows) expect(wrapsInGap(row.thread, 4 * row.scale)).toBeCloseTo(12, 9);
  });

  test('no threads, no rows', () => {
    expect(threadTable([], 4, 12, [1])).toEqual([]);
  });
});

describe('what is known of a thread', () => {
  test('measured windings go before the label, which still tells its weight', () => {
    expect(linen.wrapsFrom).toBe('measured');
    expect(linen.wrapsPerCm).toBe(30);
    expect(linen.tex).toBeCloseTo(41.338, 3);
  });

  test('without a measurement windings are reckoned; without a label the weight is estimated', () => {
    expect(thread({ name: 'a', fibre: 'linen', count: 'NeL 80/2' }).wrapsFrom).toBe('reckoned');
    const old = thread({ name: 'b', fibre: 'linen', wrapsPerCm: 30 });
    expect(old.yarn).toBeUndefined();
    expect(Math.abs(old.tex / 41.338 - 1)).toBeLessThan(0.2);
  });

  test('the number of a folded silk may be meant either way, until its wraps are counted or its habit is told', () => {
    const silk = (count: string, more: object = {}): boolean =>
      eitherHabit(thread({ name: 'd', fibre: 'silk', count, ...more }));
    expect(silk('Nm 60/2')).toBe(true);
    expect(silk('Ne 60/2')).toBe(true);
    expect(silk('Ne 60/2', { wrapsPerCm: 58 })).toBe(false);
    for (const sure of ['spun silk 60/2', 'Nm 60/2 resultant', 'Nm 60', '120 den x 2'])
      expect(silk(sure)).toBe(false);
    expect(eitherHabit(thread({ name: 'e', fibre: 'linen', count: 'NeL 60/2' }))).toBe(false);
  });

  test('a label that cannot be read is told', () => {
    expect(threadOf({ name: 'c', fibre: 'silk', count: '60/2' })).toMatchObject({
      ok: false,
      trouble: { kind: 'no-system' },
    });
  });
});
