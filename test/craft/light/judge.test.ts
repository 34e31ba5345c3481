import { describe, expect, test } from 'vitest';
import { seededRandom } from '#base/random.ts';
import { judgeCard } from '#craft/light/judge.ts';
import { type CardOptions, photographCard, scoreOf } from '../../support/card/index.ts';
import { edging, fine, type KnownPattern, round, tape } from '../../support/patterns/index.ts';

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
  [
    'a round mat',
    round({ innerRadius: 12 }),
    { width: 2048, height: 1536, turn: 33, tilt: 7, tiltTowards: 200 },
  ],
];

describe('a card held to the light is judged hole by hole', () => {
  test.each(cards)('%s', (title, { pattern }, options) => {
    const photo = photographCard(pattern.pins, options, seededRandom(title.length));
    const judged = judgeCard(photo.picture, pattern.pins);
    if (!judged.ok) throw new Error(JSON.stringify(judged.trouble));
    const score = scoreOf(pattern.pins, photo, judged.value);
    expect(score.missingOverlooked).toBe(0);
    expect(score.soundCalledMissing).toBe(0);
    expect(score.f1).toBeGreaterThanOrEqual(0.95);
    expect(score.placeError).toBeLessThan(0.05);
  });
});
