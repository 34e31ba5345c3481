import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { findRegularity } from '#craft/true/index.ts';
import { rosehip } from '../../support/examples/rosehip.ts';
import { drawPins, edging, fine, jitter, omit, round, tape } from '../../support/patterns/index.ts';
import { byHand, measure } from './measure.ts';

describe('hand-jittered patterns', () => {
  it.each([1, 2, 3])(
    'an edging: ground to a third of its error, footside and fans to 0.7 (seed %i)',
    (seed) => {
      const known = byHand(edging({ spacing: 4.5 }), 0.2, seededRandom(seed));
      const found = measure(known, findRegularity(known.pattern.pins));
      expect(found.ratio(['ground'])).toBeLessThan(1 / 3);
      expect(found.ratio(['foot', 'fan'])).toBeLessThan(0.7);
      expect(found.worse).toBe(0);
    },
  );

  it.each([1, 2])('an edging at 56 degrees (seed %i)', (seed) => {
    const known = byHand(edging({ angle: 56, spacing: 5, repeats: 5 }), 0.2, seededRandom(seed));
    const found = measure(known, findRegularity(known.pattern.pins));
    expect(found.ratio(['ground'])).toBeLessThan(1 / 3);
    expect(found.ratio(['foot', 'fan'])).toBeLessThan(0.7);
  });

  it.each([1, 2])('fine ground round flowers (seed %i)', (seed) => {
    const known = byHand(fine({ seed }), 0.15, seededRandom(seed));
    const found = measure(known, findRegularity(known.pattern.pins));
    expect(found.ratio(['ground', 'foot'])).toBeLessThan(1 / 3);
  });

  it.each([1, 2])('a tape: its edges and footside to 0.7 (seed %i)', (seed) => {
    const known = byHand(tape(), 0.2, seededRandom(seed));
    const found = measure(known, findRegularity(known.pattern.pins));
    expect(found.ratio(['edge'])).toBeLessThan(0.7);
    expect(found.ratio(['foot'])).toBeLessThan(0.7);
  });

  it.each([1, 2])('a mat: rings to a third of their error, fans to 0.7 (seed %i)', (seed) => {
    const known = byHand(
      round({ parts: 12, sectors: 48, rings: 14, innerRadius: 12 }),
      0.2,
      seededRandom(seed),
    );
    const found = measure(known, findRegularity(known.pattern.pins));
    expect(found.ratio(['ground'])).toBeLessThan(1 / 3);
    expect(found.ratio(['fan'])).toBeLessThan(0.7);
  });
});

describe('missing pins', () => {
  it('are proposed where neighbours determine them, and hardly any others', () => {
    let [determined, found, proposed, right] = [0, 0, 0, 0];
    for (const [k, known] of [
      edging({ repeats: 5 }),
      round({ rings: 12 }),
      tape(),
      edging({ angle: 54 }),
    ].entries()) {
      const old = byHand(known, 0.15, seededRandom(20 + k));
      const one = measure(old, findRegularity(old.pattern.pins));
      determined += one.determined;
      found += one.found;
      proposed += one.proposed;
      right += one.right;
    }
    expect(determined).toBeGreaterThan(8);
    expect(found / determined).toBeGreaterThan(0.7);
    expect(right / proposed).toBeGreaterThanOrEqual(0.8);
  });

  it('are found beside openings, footside and rim too, where the other copies of an edging have them', () => {
    let [omitted, found, proposed, right] = [0, 0, 0, 0];
    for (let k = 0; k < 8; k++) {
      const random = seededRandom(40 + 4 * k);
      const strayed = jitter(edging({ angle: k % 4 === 3 ? 54 : 45 }), 0.18, random);
      const known = omit(
        strayed,
        drawPins(strayed, 4, random, (role) => role === 'ground'),
      );
      const { missing } = findRegularity(known.pattern.pins);
      const means = (one: Point, { place }: { place: Point }): boolean => distance(one, place) < 0.6;
      omitted += known.omitted.length;
      found += known.omitted.filter((gone) => missing.some((one) => means(one, gone))).length;
      proposed += missing.length;
      right += missing.filter((one) => known.omitted.some((gone) => means(one, gone))).length;
    }
    expect(found / omitted).toBeGreaterThanOrEqual(0.9);
    expect(right / proposed).toBeGreaterThanOrEqual(0.8);
  });

  it('are not called so round a spider, whose centre keeps its four nearest places free', () => {
    const ground = Array.from({ length: 300 }, (_, k) => ({ x: 3 * (k % 20), y: 3 * Math.floor(k / 20) }));
    const kept = ground.filter(({ x, y }) => Math.abs(Math.hypot(x - 30, y - 21) - 3) > 0.1);
    expect(kept).toHaveLength(296);
    expect(findRegularity(kept).missing).toEqual([]);
  });

  it('are proposed in an exact ground too, at their very place', () => {
    const whole = edging();
    const inMidst = whole.ideal.findIndex(
      (pin, k) =>
        whole.roles[k] === 'ground' && whole.ideal.filter((other) => distance(pin, other) < 5.1).length === 9,
    );
    const known = omit(whole, [inMidst]);
    const { missing } = findRegularity(known.pattern.pins);
    expect(missing).toHaveLength(1);
    expect(distance(missing[0]!, known.omitted[0]!.place)).toBeLessThan(0.001);
    expect(missing[0]!.confidence).toBeGreaterThan(0.8);
  });
});

describe('patterns that are exact', () => {
  it.each([
    ['edging', edging()],
    ['edging at 58 degrees', edging({ angle: 58 })],
    ['fine', fine()],
    ['tape', tape()],
    ['mat', round()],
  ])('leaves a drafted %s where it is', (_, known) => {
    const { places, missing, structures } = findRegularity(known.pattern.pins);
    known.pattern.pins.forEach((pin, k) => {
      expect(distance(pin, places[k]!)).toBeLessThan(0.001);
    });
    expect(missing).toEqual([]);
    expect(structures.length).toBeGreaterThan(0);
  });
});

describe('pins near a lattice but not of it', () => {
  const ground = Array.from({ length: 400 }, (_, k) => ({ x: 3 * (k % 20), y: 3 * Math.floor(k / 20) }));

  it('are not dragged on to it', () => {
    const outline = Array.from({ length: 18 }, (_, k) => ({
      x: 28.5 + 9 * Math.cos((2 * Math.PI * k) / 18),
      y: 28.5 + 9 * Math.sin((2 * Math.PI * k) / 18),
    }));
    const kept = ground.filter(({ x, y }) => Math.hypot(x - 28.5, y - 28.5) > 10.5);
    const { places } = findRegularity([...kept, ...outline]);
    outline.forEach((pin, k) => {
      expect(distance(pin, places[kept.length + k]!)).toBeLessThan(0.001);
    });
  });

  it('are called stray in the midst of whole ground, as is a pin on another', () => {
    const { stray } = findRegularity([...ground, { x: 31.3, y: 31.2 }, { x: 30, y: 30 }]);
    expect(stray).toEqual([400, 401]);
  });
});

describe('few pins', () => {
  it.each<[string, Point[]]>([
    ['no pin', []],
    ['one pin', [{ x: 3, y: 4 }]],
    [
      'two pins',
      [
        { x: 3, y: 4 },
        { x: 5, y: 4 },
      ],
    ],
    ['the same pin nine times', new Array<Point>(9).fill({ x: 1, y: 1 })],
  ])('have an honest answer: %s', (_, pins) => {
    const { places, structures, missing } = findRegularity(pins);
    expect(places).toEqual(pins);
    expect(structures).toEqual([]);
    expect(missing).toEqual([]);
  });
});

describe('the example', () => {
  it('lacks exactly the pins that were left out of it, beside openings and at the edge of the ground too', () => {
    const { known } = rosehip();
    const { missing } = findRegularity(known.pattern.pins);
    expect(missing).toHaveLength(known.omitted.length);
    for (const { place } of known.omitted) {
      expect(Math.min(...missing.map((one) => distance(one, place)))).toBeLessThan(0.1);
    }
  });
});
