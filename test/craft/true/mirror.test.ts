import { describe, expect, it } from 'vitest';
import { type Affine, applyAffine, compose, rotation, scaling, translation } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { normal, type Random, seededRandom } from '#base/random.ts';
import { findRegularity } from '#craft/true/index.ts';
import type { MirrorSymmetry } from '#pattern/structure.ts';
import { edging, fine } from '../../support/patterns/index.ts';

/** Pins by chance to the right of the y axis, none too near to another. */
function half(random: Random): Point[] {
  const pins: Point[] = [];
  while (pins.length < 50) {
    const pin = { x: 1.6 + 28 * random(), y: 50 * random() };
    if (pins.every((other) => distance(pin, other) > 2.4)) pins.push(pin);
  }
  return pins;
}

const flipped = (pins: readonly Point[]): Point[] => pins.map(({ x, y }) => ({ x: -x, y }));

const motif = (seed: number): Point[] => {
  const right = half(seededRandom(seed));
  return [...right, ...flipped(right)];
};

const shaken = (pins: readonly Point[], sigma: number, random: Random): Point[] =>
  pins.map(({ x, y }) => ({ x: x + sigma * normal(random), y: y + sigma * normal(random) }));

const mirrorOf = (pins: readonly Point[]): MirrorSymmetry | undefined =>
  findRegularity(pins).structures.find((one) => one.kind === 'mirror');

/** How far a point lies from a mirror line. */
const off = ({ through, direction }: MirrorSymmetry, { x, y }: Point): number =>
  Math.abs((x - through.x) * direction.y - (y - through.y) * direction.x);

const turned = (angle: number, size = 1): Affine =>
  compose(translation(100, 80), compose(rotation(angle), scaling(size)));

describe('a motif that mirrors itself', () => {
  it.each([0, 0.4, 1.1, 1.57, 2.2, 3])('is seen to, turned by %d radians', (angle) => {
    const map = turned(angle);
    const pins = motif(1).map((pin) => applyAffine(map, pin));
    const mirror = mirrorOf(pins)!;
    expect(off(mirror, applyAffine(map, { x: 0, y: 0 }))).toBeLessThan(1e-6);
    expect(off(mirror, applyAffine(map, { x: 0, y: 50 }))).toBeLessThan(1e-6);
    expect(mirror.pairs).toHaveLength(50);
    expect(mirror.rms).toBeLessThan(1e-6);
    findRegularity(pins).places.forEach((place, k) => {
      expect(distance(place, pins[k]!)).toBeLessThan(0.001);
    });
  });

  it.each([0.1, 25.4])('is seen to, %d times as large', (size) => {
    const mirror = mirrorOf(motif(2).map((pin) => applyAffine(turned(0.7, size), pin)))!;
    expect(off(mirror, { x: 100, y: 80 })).toBeLessThan(1e-6 * size);
    expect(mirror.pairs).toHaveLength(50);
  });

  it.each([1, 2, 3])('is trued by its two halves where the hand was unsteady (seed %i)', (seed) => {
    const random = seededRandom(seed);
    const ideal = motif(seed).map((pin) => applyAffine(turned(seed), pin));
    const pins = shaken(ideal, 0.15, random);
    const { places, structures, structureOf } = findRegularity(pins);
    const mirror = structures.find((one) => one.kind === 'mirror')!;
    expect(off(mirror, applyAffine(turned(seed), { x: 0, y: 0 }))).toBeLessThan(0.15);
    const own = pins.flatMap((_, k) => (structureOf[k] === mirror.id ? [k] : []));
    expect(own.length).toBeGreaterThan(15);
    const squares = (points: readonly Point[]): number =>
      own.reduce((sum, k) => sum + distance(points[k]!, ideal[k]!) ** 2, 0);
    // Two halves are surer than one by the square root of two.
    expect(Math.sqrt(squares(places) / squares(pins))).toBeLessThan(0.85);
  });

  it('pairs each pin with its image, and says which pin has none', () => {
    const pins = motif(4).slice(1);
    const { pairs } = mirrorOf(pins)!;
    // The partner of the first pin, which was left out.
    expect(pairs.filter(([, partner]) => partner === null)).toEqual([[49, null]]);
    for (const [pin, partner] of pairs) if (partner !== null) expect(Math.abs(pin - partner)).toBe(50);
  });
});

describe('an edging', () => {
  it('mirrors itself in a line across', () => {
    const { direction, through } = mirrorOf(edging().pattern.pins)!;
    expect(Math.abs(direction.x)).toBeCloseTo(1, 6);
    expect(through.y).toBeCloseTo(60, 6);
  });
});

describe('a pattern that does not mirror itself', () => {
  it.each([1, 2, 3])('is not said to: two halves that differ (seed %i)', (seed) => {
    const random = seededRandom(seed);
    expect(mirrorOf([...half(random), ...flipped(half(random))])).toBeUndefined();
  });

  it('is not said to: a wheel whose parts are all turned one way', () => {
    const part = half(seededRandom(5)).map(({ x, y }) => ({ x: x + 4, y: 0.3 * y }));
    const wheel = [0, 1, 2, 3, 4].flatMap((k) =>
      part.map((pin) => applyAffine(rotation((2 * Math.PI * k) / 5), pin)),
    );
    expect(mirrorOf(wheel)).toBeUndefined();
  });

  it('is not said to: flowers by chance on a ground that would', () => {
    expect(mirrorOf(fine({ seed: 2 }).pattern.pins)).toBeUndefined();
  });
});
