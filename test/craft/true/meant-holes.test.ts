import { describe, expect, it } from 'vitest';
import { applyAffine, compose, rotation, scaling } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { Drafting } from '#craft/draft/drafting.ts';
import { fillGround, groundNamed } from '#craft/draft/grounds/index.ts';
import { groundLattice, latticePlace } from '#craft/draft/lattice.ts';
import { findRegularity } from '#craft/true/regularity.ts';
import type { GroundName } from '#pattern/recipe/ground.ts';

const field = (ground: GroundName, degrees: number, turn = 0, size = 1): Point[] => {
  const lattice = groundLattice(4, degrees);
  const drafting = new Drafting();
  fillGround(drafting, groundNamed(ground), {
    columns: [0, 26],
    rows: [0, 40],
    place: (i, j) => latticePlace(lattice, i, j),
    name: (i, j) => `g${i}.${j}`,
  });
  const map = compose(rotation(turn), scaling(size));
  return drafting.pattern({ sizes: {} }).pins.map((pin) => applyAffine(map, pin));
};

describe.each(['plain', 'doubled', 'four-pin', 'honeycomb', 'rose'] as const)('%s ground', (ground) => {
  it.each([30, 38, 45, 52, 60, 68, 75])('lacks nothing and stays where it is at %d degrees', (degrees) => {
    for (const [turn, size] of [
      [0, 1],
      [0.7, 1],
      [0.2, 0.4],
    ] as const) {
      const pins = field(ground, degrees, turn, size);
      const { missing, stray, places } = findRegularity(pins);
      expect(missing).toEqual([]);
      expect(stray).toEqual([]);
      for (const [pin, place] of places.entries()) {
        expect(Math.hypot(place.x - pins[pin]!.x, place.y - pins[pin]!.y)).toBeLessThan(0.001);
      }
    }
  });
});

describe('holes that were not meant', () => {
  it('are told where pins were left out of plain ground here and there', () => {
    const random = seededRandom(7);
    const pins = field('plain', 52);
    const inner = pins.filter(({ x, y }) => x > 8 && x < 56 && y > 8 && y < 72);
    const lacking = Array.from(
      { length: 9 },
      (_, k) => inner[Math.floor((inner.length * (k + random())) / 9)]!,
    );
    const { missing } = findRegularity(pins.filter((pin) => !lacking.includes(pin)));
    for (const { x, y } of lacking) {
      expect(missing.some((found) => Math.hypot(found.x - x, found.y - y) < 0.1)).toBe(true);
    }
  });

  it('are told where a row of pins was left out in even steps', () => {
    const pins = field('plain', 45);
    const lacking = pins.filter(({ x, y }) => y === 40 && [12, 24, 36].some((at) => Math.abs(x - at) < 0.1));
    expect(lacking).toHaveLength(3);
    expect(findRegularity(pins.filter((pin) => !lacking.includes(pin))).missing).toHaveLength(3);
  });
});
