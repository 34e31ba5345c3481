import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offLine } from '#base/fit/straight.ts';
import { rotation } from '#base/geometry/affine.ts';
import { distance, type Point, subtract, unit } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { handOrder } from '#craft/route/hand.ts';
import type { PrickingOrder, PrickingPass } from '#pattern/order.ts';
import { edging, fine, jitter, type KnownPattern, place, round, tape } from '../../support/patterns/index.ts';
import { diagonalStrip, type Laid, laid, patch, shaken, turned } from './regularities.ts';

const orderOf = ({ pattern, regularity }: Laid): PrickingOrder => handOrder(pattern, regularity);

const rank = ['outside-edge', 'curve', 'motif', 'filling', 'ground'];

function expectLawful({ pattern, regularity }: Laid, straightWithin: number): PrickingOrder {
  const order = handOrder(pattern, regularity);
  const all = order.passes.flatMap((pass) => pass.order);
  expect(all.toSorted((a, b) => a - b)).toEqual(pattern.pins.map((_, at) => at));
  expect(order.passes.every((pass) => pass.order.length > 0)).toBe(true);
  const ranks = order.passes.map((pass) => rank.indexOf(pass.kind));
  expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
  for (const pass of order.passes) expectAlongRuler(pass, pattern.pins, straightWithin);
  return order;
}

function expectAlongRuler({ ruler, order }: PrickingPass, pins: readonly Point[], within: number): void {
  if (ruler === null) return;
  const line = { through: ruler.from, direction: unit(subtract(ruler.to, ruler.from)) };
  expect(Math.hypot(line.direction.x, line.direction.y)).toBeCloseTo(1, 9);
  for (const index of order) expect(Math.abs(offLine(line, pins[index]!))).toBeLessThanOrEqual(within);
  const along = order.map((index) => distance(ruler.from, pins[index]!));
  expect(along).toEqual(along.toSorted((a, b) => a - b));
}

describe('any pattern', () => {
  const anyPlaces = fc.array(
    fc.record({ x: fc.integer({ min: 0, max: 12 }), y: fc.integer({ min: 0, max: 12 }) }),
    { maxLength: 60 },
  );

  it('has every pin in exactly one pass, whatever stands on one spot or on one line', () => {
    fc.assert(
      fc.property(anyPlaces, (places) => {
        expectLawful(laid(places, []), 0);
      }),
    );
  });

  it.each([
    ['no pin', []],
    ['one pin', [{ x: 1, y: 2 }]],
    [
      'two pins on one spot',
      [
        { x: 1, y: 2 },
        { x: 1, y: 2 },
      ],
    ],
    ['pins on one line', [4, 1, 3, 0, 2].map((x) => ({ x, y: 2 * x }))],
  ])('may have %s', (_, places) => {
    expectLawful(laid(places, []), 0);
  });

  it('made by our generators keeps its law with nothing found but the runs that are named', () => {
    for (const known of [edging(), fine(), round(), tape()]) {
      const shaky = jitter(known, 0.1, seededRandom(7));
      expectLawful(laid(shaky.pattern.pins, [], { ...shaky.pattern }), 0.6);
    }
  });
});

describe('a pattern with named runs', () => {
  const passesOf = ({ pattern }: KnownPattern) => orderOf(laid(pattern.pins, [], { ...pattern })).passes;

  it.each([
    ['an edging', edging()],
    ['a fine piece', fine()],
    ['a tape', tape()],
  ])('has the same passes whichever way it lies: %s', (_, known) => {
    const asSets = (passes: readonly PrickingPass[]) =>
      passes.map(({ kind, order }) => `${kind} ${order.toSorted((a, b) => a - b).join(' ')}`).sort();
    for (const angle of [0.4, 1.9, -2.7])
      expect(asSets(passesOf(place(known, rotation(angle))))).toEqual(asSets(passesOf(known)));
  });

  it('is pricked along its straight footside first, then round its headside', () => {
    const known = edging();
    const [first, ...rest] = passesOf(known);
    const foot = known.pattern.runs.find((run) => run.role === 'footside')!;
    const ids = first!.order.map((index) => known.pattern.pins[index]!.id);
    expect([...ids].sort()).toEqual([...foot.pins].sort());
    expect(first!.ruler).not.toBeNull();
    expect(rest.filter((pass) => pass.kind === 'outside-edge').every((pass) => pass.ruler === null)).toBe(
      true,
    );
  });
});

describe('ground along a ruler', () => {
  it.each([
    [6, 16],
    [16, 6],
    [3, 40],
    [1, 9],
  ])(
    'of a diagonal strip of %i by %i rows needs no more settings than its rows or columns',
    (columns, rows) => {
      const order = expectLawful(diagonalStrip(columns, rows), 1e-9);
      expect(order.passes.length).toBeLessThanOrEqual(Math.min(rows, 2 * columns));
    },
  );

  it('of a patch of any size and shape needs at most as many settings as its shorter side has pins', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 14 }),
        fc.integer({ min: 1, max: 14 }),
        fc.double({ min: 0.6, max: 2.4, noNaN: true }),
        fc.double({ min: 0.7, max: 1.6, noNaN: true }),
        (wide, high, angle, ratio) => {
          const a = { x: 3, y: 0 };
          const b = { x: 3 * ratio * Math.cos(angle), y: 3 * ratio * Math.sin(angle) };
          const { places, lattice } = patch('ground', 0, [{ x: 5, y: 5 }, a, b], [wide, high]);
          const order = expectLawful(laid(places, [lattice]), 1e-9);
          expect(order.passes.length).toBeLessThanOrEqual(Math.min(wide, high));
          expect(order.passes.every((pass) => pass.kind === 'ground' && pass.ruler !== null)).toBe(true);
        },
      ),
    );
  });

  it('sweeps to and fro: the next line is the neighbouring one and starts where the hand is', () => {
    const { pattern, regularity } = diagonalStrip(6, 16);
    const { passes } = handOrder(pattern, regularity);
    for (const [at, pass] of passes.entries()) {
      if (at === 0) continue;
      const end = pattern.pins[passes[at - 1]!.order.at(-1)!]!;
      expect(distance(end, pattern.pins[pass.order[0]!]!)).toBeLessThan(2.5 * 2);
    }
  });

  it('lies across gaps: a hole in the middle of the ground costs no setting', () => {
    const whole = diagonalStrip(8, 30);
    const middle = { x: 20, y: 37 };
    const keep = whole.pattern.pins.flatMap((pin, at) => (distance(pin, middle) < 9 ? [] : at));
    const lattice = whole.regularity.structures[0]!;
    if (lattice.kind !== 'lattice') throw new Error('the strip is a lattice');
    const holed = laid(
      keep.map((at) => whole.regularity.places[at]!),
      [{ ...lattice, pins: keep.map((_, at) => at), nodes: keep.map((at) => lattice.nodes[at]!) }],
    );
    expect(expectLawful(holed, 1e-9).passes.length).toBe(orderOf(whole).passes.length);
  });

  it('is the same whichever way the pattern lies', () => {
    const asSets = (order: PrickingOrder) =>
      order.passes.map((pass) => [...pass.order].sort((a, b) => a - b).join(' ')).sort();
    const strip = diagonalStrip(5, 24);
    fc.assert(
      fc.property(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (angle) => {
        const order = expectLawful(turned(strip, angle), 1e-9);
        expect(asSets(order)).toEqual(asSets(orderOf(strip)));
      }),
    );
  });

  it('of unsteady pins stays within four times their unsteadiness', () => {
    for (const seed of [1, 2, 3])
      expectLawful(shaken(turned(diagonalStrip(6, 20), 0.3), 0.15, seed), 4 * 0.15);
  });
});

describe('the order of the trade', () => {
  const ground = patch(
    'ground',
    0,
    [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 2, y: 3 },
    ],
    [12, 20],
  );
  const count = ground.places.length;
  const circle = Array.from({ length: 18 }, (_, at) => ({
    x: 120 + 10 * Math.cos((at * Math.PI) / 9),
    y: 20 + 10 * Math.sin((at * Math.PI) / 9),
  }));
  const filling = patch(
    'filling',
    count + 18,
    [
      { x: 116, y: 16 },
      { x: 2, y: 0 },
      { x: 0, y: 2 },
    ],
    [5, 5],
  );
  const petals = [0, 1, 2, 3, 4].map((at) => ({ x: 110 + at * at, y: 60 - at }));
  const footside = Array.from({ length: 21 }, (_, at) => ({ x: -6, y: 3 * at }));
  const places = [...ground.places, ...circle, ...filling.places, ...petals, ...footside];
  const whole = laid(
    places,
    [
      ground.lattice,
      {
        kind: 'run',
        id: 'outline',
        rms: 0,
        shape: 'arc',
        closed: true,
        even: true,
        spacing: 3.5,
        pins: circle.map((_, at) => count + at),
      },
      filling.lattice,
    ],
    {
      runs: [
        {
          id: 'foot',
          pins: footside.map((_, at) => `p${count + 18 + 25 + 5 + at}`),
          shape: 'line',
          closed: false,
          role: 'footside',
          even: true,
        },
      ],
    },
  );

  it('is outside edges, curves, motif, filling, ground', () => {
    const order = expectLawful(whole, 1e-9);
    expect([...new Set(order.passes.map((pass) => pass.kind))]).toEqual([
      'outside-edge',
      'motif',
      'filling',
      'ground',
    ]);
    const kindOf = (index: number) => order.passes.find((pass) => pass.order.includes(index))?.kind;
    expect(kindOf(0)).toBe('ground');
    expect(kindOf(count)).toBe('outside-edge');
    expect(kindOf(count + 18)).toBe('filling');
    expect(kindOf(count + 18 + 25)).toBe('motif');
    expect(kindOf(places.length - 1)).toBe('outside-edge');
  });

  it('pricks a headside that nobody saw as one curve among the outside edges', () => {
    const strip = diagonalStrip(5, 24);
    const ground = strip.pattern.pins;
    const right = Math.max(...ground.map(({ x }) => x));
    const headside = Array.from({ length: 30 }, (_, at) => ({
      x: right + 3 + 2 * Math.abs(Math.sin(at / 3)) + (at % 2),
      y: 1.95 * at,
    }));
    const order = expectLawful(laid([...ground, ...headside], strip.regularity.structures), 1e-9);
    const edge = order.passes.filter((pass) => pass.kind === 'outside-edge').flatMap((pass) => pass.order);
    expect(edge.length).toBeGreaterThan(20);
    for (const index of edge) expect(index).toBeGreaterThanOrEqual(ground.length);
  });

  it('says of an area of ground that it is ground, however small', () => {
    const outline = [
      { x: 115, y: 15 },
      { x: 126, y: 15 },
      { x: 126, y: 26 },
      { x: 115, y: 26 },
    ];
    const said = { ...whole.pattern, areas: [{ id: 'a', outline, stitch: 'ground' as const }] };
    const order = handOrder(said, whole.regularity);
    expect(order.passes.some((pass) => pass.kind === 'filling')).toBe(false);
  });

  it('a curve that stands inside the ground is a curve, not an outside edge', () => {
    const around = patch(
      'ground',
      18,
      [
        { x: 90, y: -10 },
        { x: 4, y: 0 },
        { x: 0, y: 4 },
      ],
      [15, 15],
    );
    const keep = around.places.flatMap((place, at) => (distance(place, { x: 120, y: 20 }) < 13 ? [] : at));
    const inside = laid(
      [...circle, ...keep.map((at) => around.places[at]!)],
      [
        {
          kind: 'run',
          id: 'outline',
          rms: 0,
          shape: 'arc',
          closed: true,
          even: true,
          spacing: 3.5,
          pins: circle.map((_, at) => at),
        },
        {
          ...around.lattice,
          pins: keep.map((_, at) => 18 + at),
          nodes: keep.map((at) => around.lattice.nodes[at]!),
        },
      ],
    );
    const order = expectLawful(inside, 1e-9);
    expect(order.passes[0]!.kind).toBe('curve');
    expect(order.passes[0]!.order.toSorted((a, b) => a - b)).toEqual(circle.map((_, at) => at));
  });

  it('of a round piece goes ring by ring from the outside in', () => {
    const sectors = 24;
    const radii = [10, 14, 19, 25];
    const nodes = radii.flatMap((_, ring) =>
      Array.from({ length: sectors }, (_, sector) => [ring, sector] as const),
    );
    const rings = nodes.map(([ring, sector]) => ({
      x: radii[ring]! * Math.cos((2 * Math.PI * sector) / sectors),
      y: radii[ring]! * Math.sin((2 * Math.PI * sector) / sectors),
    }));
    const mat = laid(rings, [
      {
        kind: 'polar',
        id: 'mat',
        rms: 0,
        centre: { x: 0, y: 0 },
        sectors,
        radii,
        phases: [0, 0, 0, 0],
        pins: nodes.map((_, at) => at),
        nodes,
      },
    ]);
    const order = expectLawful(mat, 1e-9);
    expect(order.passes.map((pass) => nodes[pass.order[0]!]![0])).toEqual([3, 2, 1, 0]);
    expect(order.passes.map((pass) => pass.kind)).toEqual(['outside-edge', 'ground', 'ground', 'ground']);
    for (const pass of order.passes) expect(pass.order).toHaveLength(sectors);
  });
});
