import { describe, expect, test } from 'vitest';
import { draft } from '#craft/draft/draft.ts';
import { threadOf } from '#craft/size/thread.ts';
import { type Sizing, sizePattern } from '#jobs/size/size.ts';
import type { FitPlace, SizeWish } from '#jobs/size/wish.ts';
import { sizeInWords } from '#jobs/words/size.ts';
import { footsideSpacing } from '#pattern/footside.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';
import { recipeSchema } from '#pattern/recipe/recipe.ts';
import { edging } from '../../support/patterns/index.ts';
import { plainSizeWish } from '../../support/plain-size-wish.ts';

const known = threadOf({ name: 'linen', fibre: 'linen', count: 'NeL 80/2', wrapsPerCm: 30 });
if (!known.ok) throw new Error(known.trouble.kind);
const linen = known.value;

const strip = (() => {
  const recipe = recipeSchema.parse({
    kind: 'strip',
    spacing: 5,
    angle: 45,
    repeats: 3,
    length: 4,
    width: 8,
  });
  const drafted = draft(recipe, { name: 'Strip' });
  if (!drafted.ok) throw new Error(drafted.trouble.kind);
  return drafted.value;
})();

const size = (pattern: Pattern | null, wish: Partial<SizeWish>) =>
  sizePattern(pattern, { ...plainSizeWish, ...wish }, () => {});

function sized(pattern: Pattern | null, wish: Partial<SizeWish>): Sizing {
  const found = size(pattern, wish);
  if (!found.ok) throw new Error(found.trouble.kind);
  return found.value;
}

const filling = (place: FitPlace, more = {}) =>
  ({ kind: 'fit', place, corners: { mm: 0 }, way: null, repeats: null, limit: 0.05, ...more }) as const;

describe('the footside spacing', () => {
  test('is what the pattern states, else the middle step of its footside', () => {
    expect(footsideSpacing(strip)).toBe(5);
    const { sizes: _, ...rest } = strip;
    expect(footsideSpacing({ ...rest, sizes: {} })).toBeCloseTo(5, 9);
    expect(footsideSpacing(patternFromPins([{ x: 0, y: 0 }]))).toBeNull();
  });
});

describe('to a size', () => {
  test('to a spacing: the pattern comes out at it', () => {
    const { pattern, factor, copies } = sized(strip, { target: { kind: 'spacing', spacing: 4 } });
    expect(factor).toBeCloseTo(0.8, 12);
    expect(footsideSpacing(pattern!)).toBeCloseTo(4, 12);
    expect(pattern!.recipe).toMatchObject({ spacing: 4 });
    expect(copies!.percents).toEqual([80]);
  });

  test('to a thread: 30 wraps a cm and 12 in the gap ask for 4 mm', () => {
    // Common practice, from memory: about 12 wraps fill a footside gap of Torchon.
    const { after, threads } = sized(strip, { threads: [linen], target: { kind: 'thread' } });
    expect(after.spacing).toBeCloseTo(4, 12);
    expect(threads[0]!.here).toMatchObject({ fit: 'suits' });
    expect(threads[0]!.here!.wraps).toBeCloseTo(12, 12);
  });

  test('when a pattern becomes 66 % the thread becomes as much thinner, and the other way round', () => {
    // textileschool.com, "Thread Numbering System": 20 windings a cm against 30 is 67 %.
    const coarse = threadOf({ name: 'coarse', fibre: 'linen', count: 'NeL 35/2', wrapsPerCm: 20 });
    if (!coarse.ok) throw new Error('no thread');
    const { threads } = sized(strip, { threads: [linen, coarse.value], spacing: 6 });
    expect(threads[0]!.rightSpacing / threads[1]!.rightSpacing).toBeCloseTo(2 / 3, 12);
  });

  test('nothing asked for changes nothing', () => {
    const { factor, copies, pattern } = sized(strip, {});
    expect([factor, copies]).toEqual([1, null]);
    expect(pattern!.pins).toEqual(strip.pins);
  });
});

describe('to a place', () => {
  test('round a roller: a strip is drafted anew with whole repeats, and its length is the way round', () => {
    // 3 repeats of 20 mm; 478 mm round is 24 of them at 99.6 %.
    const { pattern, redrafted, fitted } = sized(strip, {
      target: filling({ kind: 'roller', circumference: 478 }),
    });
    expect(fitted!.chosen.counts).toEqual([24]);
    expect(redrafted).toBe(true);
    expect(pattern!.recipe).toMatchObject({ repeats: 24 });
    const ys = pattern!.pins.map(({ y }) => y);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(478, 9);
  });

  test('a card that lies outside the pillow has to be longer in the flat', () => {
    const thick = { ...strip, sizes: { ...strip.sizes, cardThickness: 0.5 } };
    const { pattern } = sized(thick, { target: filling({ kind: 'roller', circumference: 478 }) });
    const ys = pattern!.pins.map(({ y }) => y);
    expect(Math.max(...ys)).toBeCloseTo(478 + Math.PI * 0.5, 9);
  });

  test('hand edits go before the number of repeats: nothing made by hand is lost', () => {
    const [first, ...others] = strip.pins.slice(-5);
    const edited = {
      ...strip,
      pins: [...strip.pins.slice(0, -5), { ...first!, x: first!.x + 0.3 }, ...others],
    };
    const { pattern, fitted } = sized(edited, {
      target: filling({ kind: 'length', length: 41 }),
    });
    expect(fitted!.chosen.counts).toEqual([2]);
    expect(
      pattern!.pins.some(({ id, x }) => id === first!.id && Math.abs(x / (41 / 40) - first!.x - 0.3) < 0.001),
    ).toBe(true);
  });

  test('a drawn pattern is scaled alone', () => {
    const { pattern } = edging();
    const step = Math.hypot(pattern.repeat!.step.x, pattern.repeat!.step.y);
    const {
      factor,
      redrafted,
      pattern: larger,
    } = sized(pattern, {
      target: filling({ kind: 'length', length: 10.2 * step }),
    });
    expect(factor).toBeCloseTo(1.02, 9);
    expect(redrafted).toBe(false);
    expect(larger!.pins).toHaveLength(pattern.pins.length);
  });

  test('a ring round a cloth: its footside circle is as wide as the cloth', () => {
    const recipe = recipeSchema.parse({
      kind: 'ring',
      spacing: 5,
      angle: 45,
      repeats: 12,
      length: 8,
      width: 6,
    });
    const drafted = draft(recipe, { name: 'Ring' });
    if (!drafted.ok) throw new Error(drafted.trouble.kind);
    const { pattern, fitted } = sized(drafted.value, {
      target: filling({ kind: 'round', diameter: 150 }),
    });
    expect(fitted!.chosen.counts).toEqual([12]);
    const foot = pattern!.runs.find(({ role }) => role === 'footside')!;
    const places = new Map(pattern!.pins.map((pin) => [pin.id, pin]));
    // Opposite pins of 96: as far apart as the cloth is wide.
    const [one, other] = [places.get(foot.pins[0]!)!, places.get(foot.pins[48]!)!];
    expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeCloseTo(150, 6);
  });

  test('a repeat that is not stated is found among the pins', () => {
    const { pattern } = edging({ repeats: 6 });
    const { repeat, ...rest } = pattern;
    const step = Math.hypot(repeat!.step.x, repeat!.step.y);
    const { before } = sized(rest, { target: filling({ kind: 'length', length: 10 * step }) });
    expect(before.repeat! / step).toBeCloseTo(Math.round(before.repeat! / step), 3);
  });

  test('a cloth: corners in repeats or mm, by scale or by ease', () => {
    const cloth = { kind: 'cloth', width: 207, height: 207 } as const;
    const scaled = sized(strip, { target: filling(cloth, { corners: { repeats: 1 }, way: 'scale' }) });
    expect(scaled.fitted!.chosen).toMatchObject({ counts: [9], ease: [0] });
    expect(scaled.factor).toBeCloseTo(207 / 200, 12);
    const eased = sized(strip, { target: filling(cloth, { corners: { mm: 20 }, way: 'ease' }) });
    expect(eased.factor).toBe(1);
    expect(eased.fitted!.chosen.ease[0]).toBeCloseTo(7, 9);
  });
});

describe('what cannot be', () => {
  const few = patternFromPins([
    { x: 0, y: 0 },
    { x: 7, y: 1 },
  ]);
  test.each([
    ['size-scale-unknown', { ...few, unit: 'px' as const }, { target: { kind: 'scale', factor: 2 } }],
    ['size-no-spacing', few, { target: { kind: 'spacing', spacing: 4 } }],
    ['size-no-repeat', few, { target: filling({ kind: 'length', length: 100 }) }],
    ['size-no-thread', strip, { target: { kind: 'thread' } }],
    ['size-absurd', strip, { target: { kind: 'scale', factor: 500 } }],
    ['repeats-over-limit', strip, { target: filling({ kind: 'length', length: 30 }) }],
  ] as const)('%s', (kind, pattern, wish) => {
    expect(size(pattern, wish)).toMatchObject({ ok: false, trouble: { kind } });
  });
});

test('the page says what rests on memory, and both units', () => {
  const page = sizeInWords(sized(strip, { threads: [linen], target: { kind: 'spacing', spacing: 4 } }));
  expect(page).toContain('common practice, from memory');
  expect(page).toContain('4 mm (0.157 in)');
  expect(page).toContain('A fresh print is truer than any copy');
  expect(page).not.toMatch(/undefined|NaN|\[object/);
});

test('a folded silk is told both ways, and a needle comes with its names and its caution', () => {
  const silk = threadOf({ name: 'silk', fibre: 'silk', count: 'Nm 60/2' });
  if (!silk.ok) throw new Error(silk.trouble.kind);
  const page = sizeInWords(sized(strip, { threads: [silk.value] }));
  expect(page).toContain('"60/2 Nm resultant"');
  expect(page).toMatch(/As thick in other gauges: .*SWG \d/);
  expect(page).toContain('Needles are sharp');
  expect(sizeInWords(sized(strip, { threads: [linen] }))).not.toContain('resultant');
});
