/**
 * How looking over and the hand's order grow with the pins, as ratios to a named peer in the same run: a full pass of
 * kdbush (index all pins, ask for the neighbours of each), which is about the least that any rule on neighbours costs.
 */
import Delaunator from 'delaunator';
import { distance, type Point } from '#base/geometry/point.ts';
import { normal, seededRandom } from '#base/random.ts';
import { lookOver } from '#craft/look/look-over.ts';
import { defaultLookOptions } from '#craft/look/options.ts';
import type { Inspection } from '#craft/look/survey.ts';
import { handOrder } from '#craft/route/hand.ts';
import { findRegularity } from '#craft/true/index.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Regularity } from '#pattern/structure.ts';
import { neighbourPass } from './peers/neighbours.ts';

const SIZES = [10_000, 30_000, 100_000] as const;
const ROUNDS = 9;
const SEED = 20_240_201;

const rows = SIZES.map((size) => {
  const inspection = largeInspection(size);
  const { pattern, regularity } = inspection;
  const peer = fastest(() => neighbourPass(pattern.pins, 0.75));
  return {
    size,
    findings: lookOver(inspection).length,
    peer,
    look: fastest(() => lookOver(inspection)),
    triangulate: fastest(() => triangulate(pattern.pins)),
    hand: fastest(() => handOrder(pattern, regularity)),
    find: fastest(() => findRegularity(pattern.pins), 1),
  };
});

console.log(
  `pins       findings   neighbour pass   look over          x pass   hand order         x Delaunay`,
);
for (const { size, findings, peer, look, triangulate, hand } of rows)
  console.log(
    [
      String(size).padEnd(10),
      String(findings).padEnd(10),
      `${peer.toFixed(1)} ms`.padEnd(16),
      `${look.toFixed(1)} ms`.padEnd(18),
      (look / peer).toFixed(2).padEnd(8),
      `${hand.toFixed(1)} ms`.padEnd(18),
      (hand / triangulate).toFixed(2),
    ].join(' '),
  );

console.log(
  '\ngrowth               pins    n log n   neighbour pass   look over   hand order   finding structures',
);
for (const [at, large] of rows.entries()) {
  const small = rows[at - 1];
  if (small === undefined) continue;
  const ideal = (large.size * Math.log(large.size)) / (small.size * Math.log(small.size));
  console.log(
    [
      `${small.size} to ${large.size}`.padEnd(20),
      (large.size / small.size).toFixed(2).padEnd(7),
      ideal.toFixed(2).padEnd(9),
      (large.peer / small.peer).toFixed(2).padEnd(16),
      (large.look / small.look).toFixed(2).padEnd(11),
      (large.hand / small.hand).toFixed(2).padEnd(12),
      (large.find / small.find).toFixed(2),
    ].join(' '),
  );
}

console.log('\npins       finding the structures first   with looking over   x neighbour pass');
for (const { size, find, look, peer } of rows)
  console.log(
    [
      String(size).padEnd(10),
      `${find.toFixed(0)} ms`.padEnd(30),
      `${(find + look).toFixed(0)} ms`.padEnd(19),
      ((find + look) / peer).toFixed(1),
    ].join(' '),
  );

const few = largeInspection(5_000);
const pairs = fastest(() => closePairsOfAll(few.pattern.pins, 0.75));
const ours = fastest(() => lookOver(few));
console.log(
  `\nat 5000 pins, comparing all pairs alone takes ${(pairs / ours).toFixed(1)} times as long as every rule together`,
);

/**
 * A square of shaken ground with specks, doubles and gaps, a line from every pin to the next row, and
 * a declared footside.
 */
function largeInspection(size: number): Inspection {
  const random = seededRandom(SEED);
  const across = Math.round(Math.sqrt(size / 2));
  const place = (at: number): Point => {
    const [column, row] = [at % across, Math.floor(at / across)];
    return { x: 5 * column + 2.5 * (row % 2), y: 2.5 * row };
  };
  const exact = Array.from({ length: size }, (_, at) => place(at));
  const places = exact.map(({ x, y }, at) =>
    at % 997 === 996 ? { ...exact[at - 1]! } : { x: x + 0.1 * normal(random), y: y + 0.1 * normal(random) },
  );
  const pins = places.map(({ x, y }, at) => ({ id: `p${at}`, x, y, confidence: at % 501 === 0 ? 0.3 : 0.9 }));
  const footside = pins.filter((_, at) => at % (2 * across) === 0).map((pin) => pin.id);
  const pattern: Pattern = {
    unit: 'mm',
    about: { maker: 'nobody', permission: 'for measuring' },
    pins,
    runs: [{ id: 'foot', pins: footside, shape: 'line', closed: false, role: 'footside', even: true }],
    marks: pins.slice(across).map((pin, at) => ({
      id: `m${at}`,
      kind: 'line',
      from: { pin: pin.id },
      to: at % 50 === 0 ? { x: pin.x - 2.5, y: pin.y - 2.6 } : { pin: pins[at]!.id },
    })),
    areas: [],
    repeat: { step: { x: 0, y: 50 } },
    sizes: {},
    scale: { from: 'drafted' },
  };
  const nodes = exact.map((_, at) => {
    const [column, row] = [2 * (at % across) + (Math.floor(at / across) % 2), Math.floor(at / across)];
    return [(column + row) / 2, (column - row) / 2] as const;
  });
  const regularity: Regularity = {
    structures: [
      {
        id: 'ground',
        kind: 'lattice',
        rms: 0.14,
        origin: { x: 0, y: 0 },
        a: { x: 2.5, y: 2.5 },
        b: { x: 2.5, y: -2.5 },
        pins: pins.map((_, at) => at),
        nodes,
      },
    ],
    structureOf: pins.map(() => 'ground'),
    places: exact,
    missing: exact.flatMap(({ x, y }, at) =>
      at % 300 === 0 ? [{ x, y, confidence: random(), structure: 'ground', why: 'lattice' as const }] : [],
    ),
    stray: pins.flatMap((_, at) => (at % 400 === 0 ? [at] : [])),
  };
  return { pattern, regularity, options: defaultLookOptions };
}

function triangulate(pins: readonly Point[]): number {
  return new Delaunator(Float64Array.from(pins.flatMap(({ x, y }) => [x, y]))).triangles.length;
}

function closePairsOfAll(pins: readonly Point[], reach: number): number {
  let pairs = 0;
  for (let one = 0; one < pins.length; one++)
    for (let other = one + 1; other < pins.length; other++)
      if (distance(pins[one]!, pins[other]!) < reach) pairs++;
  return pairs;
}

/** Milliseconds of the fastest of several rounds: other work on the machine can only make a round slower. */
function fastest(work: () => unknown, rounds = ROUNDS): number {
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times);
}
