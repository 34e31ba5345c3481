import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { choosePin, needleForPin, usualPins } from '#craft/size/pins.ts';
import { type Thread, threadOf } from '#craft/size/thread.ts';
import { holeForPin } from '#pattern/hole-for-pin.ts';

function wound(wrapsPerCm: number): Thread {
  const thread = threadOf({ name: 'linen', fibre: 'linen', wrapsPerCm });
  if (!thread.ok) throw new Error('no thread');
  return thread.value;
}

describe('the pin for a grid and a thread', () => {
  test('the usual pins from coarse to very fine (common practice, from memory)', () => {
    const pins = [6, 4, 3, 2].map((spacing) => choosePin(spacing, null).pin);
    expect(pins).toEqual([0.65, 0.55, 0.45, 0.4]);
  });

  test('the finer of what grid and thread ask for', () => {
    expect(choosePin(6, wound(45))).toMatchObject({ work: 'fine', pin: 0.45, from: 'thread' });
    expect(choosePin(3, wound(20))).toMatchObject({ work: 'fine', pin: 0.45, from: 'grid' });
  });

  test('a measured pin goes before both', () => {
    expect(choosePin(6, wound(45), 0.5)).toMatchObject({ pin: 0.5, from: 'measured' });
  });

  test('what a pin leaves free between two of the footside', () => {
    const { room, threadsInRoom } = choosePin(4, wound(30));
    expect(room).toBeCloseTo(4 - 0.55, 12);
    expect(threadsInRoom).toBeCloseTo((4 - 0.55) * 3, 9);
    expect(choosePin(0.5, null, 0.6).room).toBe(0);
  });

  test('a closer grid or a finer thread never asks for a thicker pin (seed 4)', () => {
    const some = fc.double({ min: 0.5, max: 12, noNaN: true });
    fc.assert(
      fc.property(some, some, fc.double({ min: 10, max: 100, noNaN: true }), (a, b, wraps) => {
        const [close, wide] = a < b ? [a, b] : [b, a];
        expect(choosePin(close, wound(wraps)).pin).toBeLessThanOrEqual(choosePin(wide, wound(wraps)).pin);
        expect(choosePin(a, wound(wraps * 1.3)).pin).toBeLessThanOrEqual(choosePin(a, wound(wraps)).pin);
      }),
      { seed: 4 },
    );
  });
});

describe('the needle for a pin', () => {
  test.each(usualPins.map(({ pin }) => [pin]))(
    'is slightly thinner than a pin of %d mm, and so is the hole',
    (pin) => {
      const { least, wanted, most, needles } = needleForPin(pin);
      expect(holeForPin(pin)).toBe(wanted);
      expect(least).toBeLessThan(wanted);
      expect(wanted).toBeLessThan(most);
      expect(most).toBeLessThan(pin);
      for (const { mm } of needles) {
        expect(mm).toBeLessThan(pin);
        expect(mm).toBeGreaterThanOrEqual(least);
      }
    },
  );

  test('a sharps 10, the usual one, goes with the pin of 0.55 mm', () => {
    expect(needleForPin(0.55).needles.map(({ label }) => label)).toContain('sharps 10');
    expect(needleForPin(0.45).needles.map(({ label }) => label)).not.toContain('sharps 10');
  });

  test('none is offered where no needle of the chart will do', () => {
    expect(needleForPin(0.3).needles).toEqual([]);
  });
});

test('other gauges show their nearest size, where it is slightly thinner than the pin', () => {
  const near = (pin: number): string[] =>
    needleForPin(pin).others.map(({ gauge, size }) => `${gauge} ${size.label}`);
  expect(near(0.45)).toEqual(['tubing 27 G', 'SWG 27', 'AWG 26', 'number drill #78']);
  expect(near(0.65)).toContain('machine needle NM 60');
  expect(near(3)).toEqual([]);
});
