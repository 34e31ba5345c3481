import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '#base/random.ts';
import { judgeCard } from '#craft/light/judge.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import { type CardOptions, type CardPhoto, photographCard, scoreOf } from '../../support/card/index.ts';
import { edging, fine, type KnownPattern, round, tape } from '../../support/patterns/index.ts';

const large = { width: 2048, height: 1536 } as const;

const cards: [string, KnownPattern, CardOptions][] = [
  ['an edging against a window', edging({ repeats: 2 }), { scene: 'window', turn: 92, tilt: 6, k1: -0.008 }],
  [
    'a fine ground from the back',
    fine({ repeats: 1, seed: 3 }),
    { turn: -82, tilt: 8, tiltTowards: 70, mirrored: true },
  ],
  [
    'a tape before a lamp',
    tape({ repeats: 2 }),
    { scene: 'lamp', turn: 176, tilt: 10, tiltTowards: 120, k1: -0.012 },
  ],
  ['a round mat', round({ innerRadius: 12 }), { ...large, turn: 33, tilt: 7, tiltTowards: 200, k1: 0.005 }],
];

describe('a card held to the light is judged hole by hole', () => {
  test.each(cards)('%s', (title, { pattern }, options) => {
    const photo = photographCard(pattern.pins, options, seededRandom(title.length));
    const score = scoreOf(pattern.pins, photo, judged(photo, pattern.pins));
    expect(score.missingOverlooked).toBe(0);
    expect(score.soundCalledMissing).toBe(0);
    expect(score.f1).toBeGreaterThanOrEqual(0.95);
    expect(score.placeError).toBeLessThan(0.05);
  });

  test('a card without a fault has none found', () => {
    const { pattern } = fine({ repeats: 1, seed: 4 });
    const none = { missing: 0, offCentre: 0, oval: 0, extra: 0 };
    const photo = photographCard(
      pattern.pins,
      { ...large, faults: none, turn: 12, tilt: 4 },
      seededRandom(8),
    );
    const { missing, extra, offCentre, large: wide, unseen } = judged(photo, pattern.pins);
    expect([missing, extra, offCentre, wide, unseen]).toEqual([[], [], [], [], []]);
  });
});

describe('the same card seen otherwise gets the same verdicts', () => {
  const { pattern } = fine({ repeats: 1, seed: 5 });
  const own = (options: CardOptions): [CardPhoto, Judgement] => {
    const photo = photographCard(pattern.pins, { ...large, ...options }, seededRandom(21));
    return [photo, judged(photo, pattern.pins)];
  };
  const [, first] = own({});

  test('turned, turned over, nearer and tilted', () => {
    const views = fc.record({
      turn: fc.double({ min: 0, max: 360, noNaN: true }),
      mirrored: fc.boolean(),
      tilt: fc.double({ min: 0, max: 20, noNaN: true }),
      tiltTowards: fc.double({ min: 0, max: 360, noNaN: true }),
      k1: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
      pixelsPerMm: fc.double({ min: 9, max: 13, noNaN: true }),
    });
    fc.assert(
      fc.property(views, (view) => {
        const [, other] = own(view);
        expect(other.fit.mirrored).toBe(view.mirrored);
        expect(other.missing).toEqual(first.missing);
        expect(other.offCentre).toEqual(first.offCentre);
        expect(other.extra.length).toBe(first.extra.length);
        // a step from a pin to its hole is one on the card, however that is seen
        for (const { index, dx, dy } of other.pins) {
          const same = first.pins[index]!;
          if (dx === null || same.dx === null) continue;
          expect(Math.hypot(dx - same.dx, dy! - same.dy!)).toBeLessThan(0.06);
        }
      }),
      { numRuns: 4 },
    );
  });

  test('the pattern may lie anywhere and be told from any pin on', () => {
    const [photo] = own({ turn: 40 });
    const moved = pattern.pins.map(({ x, y }) => ({ x: x + 200, y: y - 90 })).reverse();
    const other = judged(photo, moved);
    const last = pattern.pins.length - 1;
    expect(other.missing.map((index) => last - index).sort((a, b) => a - b)).toEqual(first.missing);
  });
});

describe('what is regular in several ways is said to be so', () => {
  const net = Array.from({ length: 196 }, (_, k) => {
    const [row, column] = [Math.floor(k / 14), k % 14];
    return { x: 4 * column + 2 * (row % 2), y: 2 * row };
  });

  test('a plain net fits turned by half', () => {
    const photo = photographCard(net, { ...large, turn: 25, tilt: 5 }, seededRandom(6));
    const judgement = judged(photo, net);
    expect(judgement.notes.map(({ kind }) => kind)).toContain('ambiguous');
    expect(scoreOf(net, photo, judgement).f1).toBeGreaterThanOrEqual(0.95);
  });

  test('a net with one corner of its own does not', () => {
    const marked = [...net, { x: -3, y: -3 }, { x: -5, y: 0.5 }, { x: -5.5, y: 4 }];
    const photo = photographCard(marked, { ...large, turn: 130, mirrored: true }, seededRandom(7));
    const judgement = judged(photo, marked);
    expect(judgement.notes.map(({ kind }) => kind)).not.toContain('ambiguous');
    expect(judgement.fit.mirrored).toBe(true);
  });
});

function judged(photo: CardPhoto, pins: readonly { x: number; y: number }[]): Judgement {
  const result = judgeCard(photo.picture, pins);
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  return result.value;
}
