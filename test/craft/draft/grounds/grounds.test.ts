import { describe, expect, it } from 'vitest';
import { Drafting } from '#craft/draft/drafting.ts';
import { fillGround, type Ground, groundNamed } from '#craft/draft/grounds/index.ts';
import { groundLattice, latticePlace } from '#craft/draft/lattice.ts';
import { groundName } from '#pattern/recipe/ground.ts';

const name = (i: number, j: number) => `g${i}.${j}`;

describe.each(groundName.options)('the %s ground', (which) => {
  const ground = groundNamed(which);

  it('is called so, and stands on the places of the plain ground', () => {
    expect(ground.name).toBe(which);
    expect(ground.columns % 2).toBe(0);
    expect(ground.rows % 2).toBe(0);
    for (const { i, j } of ground.pins) {
      expect((i + j) % 2).toBe(0);
      expect(i).toBeLessThan(ground.columns);
      expect(j).toBeLessThan(ground.rows);
    }
    expect(new Set(ground.pins.map(({ i, j }) => name(i, j))).size).toBe(ground.pins.length);
  });

  it('has as many pairs into a pin as out of it, two where a stitch is worked with two others', () => {
    // common practice, no source: a stitch takes two pairs in and gives two out. Doubled ground draws the two pairs
    // that stay together between its two stitches as one line.
    const [into, out] = [flow(ground, 'to'), flow(ground, 'from')];
    if (which === 'doubled') {
      expect(into.map((pairs, pin) => pairs + out[pin]!)).toEqual([3, 3, 3, 3]);
    } else {
      expect(into).toEqual(ground.pins.map(() => 2));
      expect(out).toEqual(ground.pins.map(() => 2));
    }
  });

  it('has lines no longer than two steps of the ground, and none that goes up', () => {
    for (const { from, to, across, down } of ground.lines) {
      const [a, b] = [ground.pins[from]!, ground.pins[to]!];
      const [i, j] = [b.i - a.i + across * ground.columns, b.j - a.j + down * ground.rows];
      expect(Math.max(Math.abs(i), Math.abs(j))).toBeLessThanOrEqual(2);
      expect(j).toBeGreaterThanOrEqual(0);
      expect(i !== 0 || j !== 0).toBe(true);
    }
  });

  it('has in each cell the pins that it should, and no line twice', () => {
    const drafting = new Drafting();
    const [across, down] = [3, 2];
    fillGround(drafting, ground, {
      columns: [-ground.columns, (across - 1) * ground.columns - 1],
      rows: [-ground.rows, (down - 1) * ground.rows - 1],
      place: (i, j) => ({ x: i, y: j }),
      name,
    });
    expect(drafting.pinCount).toBe(across * down * ground.pins.length);
    const { marks, pins } = drafting.pattern({ sizes: {} });
    const pairs = marks.map((mark) => mark.id.split('-g').sort().join());
    expect(new Set(pairs).size).toBe(pairs.length);
    // No line leaves the pins, and every cell's own lines are there.
    expect(pins.every(({ id, x, y }) => id === name(x, y))).toBe(true);
  });

  it('keeps the ids of the pins that stay when the field is cut', () => {
    const ids = (inside: (x: number) => boolean) => {
      const drafting = new Drafting();
      const lattice = groundLattice(4, 54);
      return fillGround(drafting, ground, {
        columns: [0, 30],
        rows: [0, 30],
        place: (i, j) => latticePlace(lattice, i, j),
        inside: ({ x }) => inside(x),
        name,
      });
    };
    const all = ids(() => true);
    const half = ids((x) => x < 40);
    expect(half.length).toBeLessThan(all.length);
    expect(half.length).toBeGreaterThan(0);
    expect(all).toEqual(expect.arrayContaining(half));
  });
});

/** Number of lines that lead to (or from) each pin of the cell. */
const flow = (ground: Ground, end: 'from' | 'to') =>
  ground.pins.map((_, pin) => ground.lines.filter((line) => line[end] === pin).length);

describe('how many pins of its places a ground fills', () => {
  it.each([
    ['plain', 1],
    ['doubled', 2 / 3],
    ['four-pin', 4 / 9],
    ['honeycomb', 3 / 4],
    ['rose', 1],
  ] as const)('%s: %d of the plain ground', (which, share) => {
    const { pins, columns, rows, plain } = groundNamed(which);
    expect(pins.length / ((columns * rows) / 2)).toBeCloseTo(share, 12);
    expect(plain).toBe(share === 1);
  });
});

describe('a ground of 45 degrees in a disc', () => {
  // Gauss circle problem, OEIS A000328: points of the square lattice within r of one of them.
  it.each([
    [1, 5],
    [2, 13],
    [3, 29],
    [4, 49],
    [5, 81],
    [10, 317],
  ])('of %d pin distances has %d pins', (radius, count) => {
    const lattice = groundLattice(5, 45);
    const pinDistance = 5 / Math.SQRT2;
    const drafting = new Drafting();
    fillGround(drafting, groundNamed('plain'), {
      columns: [-40, 40],
      rows: [-40, 40],
      place: (i, j) => latticePlace(lattice, i, j),
      inside: ({ x, y }) => Math.hypot(x, y) <= radius * pinDistance * (1 + 1e-9),
      name,
    });
    expect(drafting.pinCount).toBe(count);
  });
});

describe('fillGround', () => {
  it('leaves pins that stand where they are, and joins the ground to them', () => {
    const drafting = new Drafting();
    drafting.pin('f0', { x: -1, y: 0 });
    const set = fillGround(drafting, groundNamed('plain'), {
      columns: [0, 1],
      rows: [0, 1],
      place: (i, j) => ({ x: i, y: j }),
      name: (i, j) => (i === 0 ? `f${j}` : name(i, j)),
    });
    expect(set).toEqual(['g1.1']);
    const { marks, pins } = drafting.pattern({ sizes: {} });
    expect(pins.map(({ id, x }) => [id, x])).toEqual([
      ['f0', -1],
      ['g1.1', 1],
    ]);
    expect(marks.map(({ id }) => id)).toEqual(['f0-g1.1']);
  });
});
