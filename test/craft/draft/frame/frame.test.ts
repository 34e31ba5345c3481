import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { silent } from '#base/progress.ts';
import { look } from '#jobs/look.ts';
import { usualChoice } from '#jobs/true/choice.ts';
import { straightenPattern } from '#jobs/true/straighten.ts';
import { findBrokenReference } from '#pattern/file/references.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';
import { anyFrame, base, drafted, met, troubleOf } from './recipes.ts';

const placesOf = (pattern: Pattern, id: string): Point[] => {
  const byId = pinsById(pattern);
  return pattern.runs.find((run) => run.id === id)!.pins.map((pin) => byId.get(pin)!);
};

describe('counts and lengths', () => {
  /** Rows from corner to corner: whole repeats, less the width beyond each corner's footside pin on both ends. */
  it('footsides are whole: n repeats less twice the width, in footside spacings, evenly from corner pin to corner pin', () =>
    fc.assert(
      fc.property(anyFrame('any'), (given) => {
        const recipe = met({ ...given, part: 'frame', headside: { kind: 'straight' } });
        const pattern = drafted(recipe);
        const corners = ['n', 'e', 's', 'w'].map((side) => placesOf(pattern, `${side}foot`));
        corners.forEach((pins, at) => {
          const repeats = at % 2 === 0 ? recipe.across : recipe.down;
          const even = recipe.width + (recipe.width % 2);
          expect(pins.length - 1).toBe(repeats * recipe.length - even);
          expect(distance(pins[0]!, pins.at(-1)!)).toBeCloseTo((pins.length - 1) * recipe.spacing, 6);
          for (let k = 1; k < pins.length; k++)
            expect(distance(pins[k - 1]!, pins[k]!)).toBeCloseTo(recipe.spacing, 6);
          // the corner pin is shared
          expect(corners[(at + 1) % 4]![0]).toBe(pins.at(-1));
        });
      }),
      { numRuns: 20 },
    ));

  /**
   * Pick's theorem (G. Pick, Lotos 19 (1899) 311): a polygon with its corners on a lattice of cells of area 1 holds
   * A + 1 - B/2 places within, B on its rim. The ground of a straight frame at 45 degrees is the ring between two
   * rectangles; in the lattice's own cells a rectangle of p by q rows has the area p q / 2, and every second row a pin.
   */
  it('a straight frame at 45 degrees has the pins that Pick counts', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 6 }),
        fc.integer({ min: 4, max: 7 }),
        fc.integer({ min: 4, max: 7 }),
        (half, across, down) => {
          const width = 2 * half;
          const pattern = drafted({ ...base, width, across, down });
          const [p, q] = [across, down].map((repeats) => 2 * repeats * base.length - 2 * width) as [
            number,
            number,
          ];
          const within = (wide: number, high: number, rim: number): number => (wide * high) / 2 + 1 - rim / 2;
          const [outerRim, innerRim] = [p + q + 4 * width, p + q];
          const outer = within(p + 2 * width, q + 2 * width, outerRim) + outerRim;
          // all of the outer rectangle but what lies strictly within the cloth
          expect(pattern.pins.length).toBe(outer - within(p, q, innerRim));
        },
      ),
      { numRuns: 30 },
    ));

  it('the headside of a straight frame at 45 degrees is as long as its rectangle', () => {
    const pattern = drafted({ ...base, across: 4, down: 5 });
    const pins = placesOf(pattern, 'headside');
    const steps = pins.map((pin, at) => distance(pin, pins[(at + 1) % pins.length]!));
    const rows = (repeats: number): number => repeats * base.length;
    // a repeat ends just above the corner's tip, so that whole repeats make the outer edge
    expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(2 * (rows(4) + rows(5)) * base.spacing, 6);
    expect(pattern.runs.find(({ id }) => id === 'headside')).toMatchObject({ closed: true, even: true });
  });
});

describe('any frame', () => {
  it('has no pin doubled, and references that resolve', () =>
    fc.assert(
      fc.property(anyFrame('any'), (recipe) => {
        const pattern = drafted(recipe);
        expect(findBrokenReference(pattern)).toBeNull();
        const index = new PointIndex(pattern.pins);
        pattern.pins.forEach((_, at) => {
          expect(index.nearestTo(at, 10)).toBeGreaterThan(0.74);
        });
      }),
      { numRuns: 40 },
    ));

  it('is its own image under a half turn, and a square one under a quarter turn', () =>
    fc.assert(
      fc.property(anyFrame('any'), fc.boolean(), (given, alike) => {
        const recipe = met({ ...given, part: 'frame', ...(alike && { down: given.across }) });
        const square = recipe.across === recipe.down;
        const { pins } = drafted(recipe);
        const index = new PointIndex(pins);
        const box = [Math.min(...pins.map(({ x }) => x)), Math.max(...pins.map(({ x }) => x))] as const;
        const tall = [Math.min(...pins.map(({ y }) => y)), Math.max(...pins.map(({ y }) => y))] as const;
        const centre = { x: (box[0] + box[1]) / 2, y: (tall[0] + tall[1]) / 2 };
        for (const { x, y } of pins) {
          const [dx, dy] = [x - centre.x, y - centre.y];
          const image = square
            ? { x: centre.x - dy, y: centre.y + dx }
            : { x: centre.x - dx, y: centre.y - dy };
          expect(index.nearest(image, 0.001)).not.toBeNull();
        }
      }),
      { numRuns: 20 },
    ));

  it('a corner is its own image in the mitre, working lines and areas too', () =>
    fc.assert(
      fc.property(anyFrame('any'), (given) => {
        const pattern = drafted({ ...given, part: 'corner', down: given.across });
        const index = new PointIndex(pattern.pins);
        const imageOf = new Map(
          pattern.pins.map(({ id, x, y }) => [
            id,
            pattern.pins[index.nearest({ x: -y, y: -x }, 0.001) ?? -1]?.id,
          ]),
        );
        const drawn = new Set(
          pattern.marks.flatMap((mark) => (mark.kind === 'line' ? [lineOf(mark.from, mark.to)] : [])),
        );
        for (const mark of pattern.marks) {
          if (mark.kind !== 'line' || !('pin' in mark.from) || !('pin' in mark.to)) continue;
          // workers of an arc go to the nearer rim pin of two that are as near, on whichever side
          if (/h/.test(mark.id)) continue;
          const image = lineOf({ pin: imageOf.get(mark.from.pin)! }, { pin: imageOf.get(mark.to.pin)! });
          expect(drawn.has(image)).toBe(true);
        }
        expect([...imageOf.values()].every((id) => id !== undefined)).toBe(true);
      }),
      { numRuns: 20 },
    ));
});

describe('steps of the ground at the mitre', () => {
  const angles = fc.double({ min: 30, max: 75, noNaN: true });
  it('differ from those of the side by no more than the tolerance, at any angle', () =>
    fc.assert(
      fc.property(angles, fc.double({ min: 0.37, max: 0.5, noNaN: true }), (angle, tolerance) => {
        const pattern = drafted({ ...base, part: 'corner', angle, tolerance, across: 12, down: 12 });
        const step = base.spacing / 2 / Math.cos((angle * Math.PI) / 180);
        for (const length of groundSteps(pattern))
          expect(Math.abs(length / step - 1)).toBeLessThanOrEqual(tolerance + 1e-9);
        const edge = placesOf(pattern, 'headside');
        for (let k = 1; k < edge.length; k++) {
          const share = distance(edge[k - 1]!, edge[k]!) / base.spacing;
          expect(Math.abs(share - 1)).toBeLessThanOrEqual(tolerance + 1e-9);
        }
      }),
      { numRuns: 25 },
    ));

  it('are all the same at 45 degrees', () => {
    for (const length of groundSteps(drafted(base))) expect(length).toBeCloseTo(2.5 * Math.SQRT2, 9);
  });

  it('an angle that the tolerance does not reach is refused, with the nearest that works', () => {
    // sqrt(2) sin(angle) = 1.25, and 0.75
    expect(troubleOf({ ...base, angle: 70 })).toMatchObject({
      figure: 'angle',
      given: 70,
      nearest: 62.11,
      why: 'does-not-fit',
    });
    expect(troubleOf({ ...base, angle: 30 })).toMatchObject({ figure: 'angle', nearest: 32.03 });
    for (const angle of [62.11, 32.03]) drafted({ ...base, angle, across: 12, down: 12 });
  });
});

describe('what cannot be met', () => {
  it('too few repeats between two corners: the least that works works', () => {
    const trouble = troubleOf({ ...base, across: 1, width: 12 });
    expect(trouble).toMatchObject({ figure: 'across', given: 1, nearest: 3, why: 'corner-does-not-divide' });
    expect(placesOf(drafted({ ...base, width: 12, across: 3 }), 'nfoot').length).toBe(3 * 6 - 12 + 1);
  });

  it('too many pins', () =>
    expect(troubleOf({ ...base, down: 10_000, length: 20 })).toMatchObject({
      figure: 'down',
      why: 'too-many-pins',
    }));

  it('a corner motif that does not fit: the nearest that does', () => {
    const corner = { shape: 'diamond', column: 4, size: 5, stitch: 'cloth', gimp: false } as const;
    const trouble = troubleOf({ ...base, corner });
    expect(trouble).toMatchObject({ figure: 'corner.size', why: 'does-not-fit' });
    drafted({ ...base, corner: { ...corner, size: trouble.nearest! } });
  });

  it('a figure of the side is named as on a strip', () =>
    expect(troubleOf({ ...base, headside: { kind: 'fans', pins: 400, stitch: 'cloth' } })).toMatchObject({
      figure: 'headside.pins',
      why: 'pins-too-close',
    }));
});

describe('sound', () => {
  it('any corner or frame at 45 degrees is looked over with no finding, and stays where it is when it is trued', () =>
    fc.assert(
      fc.property(anyFrame('straight'), (recipe) => {
        const pattern = drafted(recipe);
        expect(look(pattern, silent).findings).toEqual([]);
        const trued = straightenPattern(pattern, {}, usualChoice, silent);
        if (!trued.ok) throw new Error(JSON.stringify(trued.trouble));
        pattern.pins.forEach((pin, at) => {
          expect(distance(pin, trued.value.pattern.pins[at]!)).toBeLessThan(0.001);
        });
      }),
      { numRuns: 25 },
    ));
});

const lineOf = (from: unknown, to: unknown): string =>
  [JSON.stringify(from), JSON.stringify(to)].sort().join();

/** Lengths of the working lines between pins of the ground: not along edges or in arcs. */
function groundSteps({ pins, marks, runs }: Pattern): number[] {
  const byId = new Map(pins.map((pin) => [pin.id, pin]));
  const edges = new Set(runs.flatMap((run) => run.pins));
  return marks.flatMap((mark) => {
    if (mark.kind !== 'line' || !('pin' in mark.from) || !('pin' in mark.to)) return [];
    const [from, to] = [mark.from.pin, mark.to.pin];
    return edges.has(from) && edges.has(to) ? [] : [distance(byId.get(from)!, byId.get(to)!)];
  });
}
