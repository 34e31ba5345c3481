import { describe, expect, it } from 'vitest';
import { applyAffine, compose, determinant, scaling } from '#base/geometry/affine.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { proposalParts, straighten, takeParts } from '#craft/true/index.ts';
import { distort, edging, jitter, omit } from '../../support/patterns/index.ts';

const known = omit(jitter(edging(), 0.15, seededRandom(4)), [60, 150]);
const pins: readonly Point[] = known.pattern.pins.map(({ x, y }) => ({ x, y }));
const proposal = straighten(pins);

describe('taking a proposal in parts', () => {
  const parts = proposalParts(proposal);

  it('names every part once', () => {
    expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length);
    expect(parts.some(({ kind }) => kind === 'straighten')).toBe(true);
  });

  it('changes nothing where nothing is taken', () => {
    const taken = takeParts(proposal, () => false);
    expect(taken.places).toEqual(pins);
    expect(taken.added).toEqual([]);
    expect(taken.removed).toEqual([]);
  });

  it('is the whole proposal where all is taken', () => {
    const taken = takeParts(proposal, () => true);
    expect(taken.places).toEqual(proposal.places);
    expect(taken.added).toHaveLength(proposal.missing.length);
    expect(taken.removed).toEqual(proposal.stray);
  });

  it('moves the pins of one structure and no others', () => {
    const first = parts.find(({ kind }) => kind === 'straighten')!;
    const { places } = takeParts(proposal, (part) => part === first || part.id === first.id);
    places.forEach((place, pin) => {
      if (proposal.structureOf[pin] === first.id) expect(place).toEqual(proposal.places[pin]);
      else expect(place).toEqual(pins[pin]);
    });
  });

  it('says how far each structure moves a pin at most', () => {
    for (const part of parts) {
      if (part.kind !== 'straighten') continue;
      const moves = part.moves.map(({ pin, to }) => distance(pins[pin]!, to));
      expect(part.farthest).toBeCloseTo(Math.max(...moves), 9);
      expect(part.farthest).toBeLessThan(1);
    }
  });
});

describe('what copying did', () => {
  const skew = { a: 1.02, b: 0.015, c: -0.01, d: 0.98, e: 3, f: -2 };
  const copied = distort(jitter(edging({ repeats: 5 }), 0.05, seededRandom(9)), skew).pattern.pins;

  it('is not guessed', () => {
    expect(straighten(copied).undistort).toBeNull();
  });

  it('is undone up to size and turn by the true angle of the ground', () => {
    const { undistort } = straighten(copied, { trueAngle: Math.PI / 4 });
    const both = compose(undistort!, skew);
    // A similarity has a = d and b = -c.
    expect(Math.abs(both.a - both.d)).toBeLessThan(0.004);
    expect(Math.abs(both.b + both.c)).toBeLessThan(0.004);
    expect(determinant(undistort!)).toBeCloseTo(1, 9);
  });

  it('is undone in size too by a known distance', () => {
    const ideal = edging({ repeats: 5 }).ideal;
    const far = ideal.length - 1;
    const truth = distance(ideal[0]!, ideal[far]!);
    const knownDistance = { from: 0, to: far, length: truth };
    const { undistort } = straighten(copied, { trueAngle: Math.PI / 4, knownDistance });
    const both = compose(undistort!, skew);
    expect(Math.sqrt(determinant(both))).toBeCloseTo(1, 2);
    const bigger = straighten(
      copied.map((pin) => applyAffine(scaling(1.41), pin)),
      { knownDistance },
    ).undistort!;
    expect(bigger.a).toBeCloseTo(1 / 1.41, 1);
    expect(bigger.b).toBe(0);
  });

  it('is refused where what is known cannot be', () => {
    expect(() => straighten(pins, { trueAngle: 2 })).toThrow(RangeError);
    expect(() => straighten(pins, { knownDistance: { from: 0, to: 99999, length: 5 } })).toThrow(RangeError);
    expect(() => straighten(pins, { knownDistance: { from: 0, to: 1, length: -5 } })).toThrow(RangeError);
  });
});
