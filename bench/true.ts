/**
 * Straightening on hand-jittered patterns with known truth, then its time against a named peer in the same run: the
 * Delaunay triangulation of the same pins by delaunator, an n log n step over all pins and their neighbours.
 */
import Delaunator from 'delaunator';
import { seededRandom } from '#base/random.ts';
import { findRegularity } from '#craft/true/index.ts';
import { byHand, type Measured, measure } from '../test/craft/true/measure.ts';
import {
  edging,
  fine,
  jitter,
  type KnownPattern,
  type Role,
  round,
  tape,
} from '../test/support/patterns/index.ts';

const lattice: readonly Role[] = ['ground'];
const runs: readonly Role[] = ['foot', 'head', 'fan', 'edge', 'outline', 'picot'];
const SEEDS = 3;

const kinds: readonly (readonly [string, (seed: number) => KnownPattern])[] = [
  ['edging, 45 degrees', (seed) => edging({ spacing: 4 + 0.5 * seed, footShift: 0.1 * seed })],
  ['edging, 54 degrees', (seed) => edging({ spacing: 4 + 0.3 * seed, angle: 54, repeats: 5 })],
  ['fine', (seed) => fine({ spacing: 2.5 + 0.1 * seed, seed, repeats: 3 })],
  ['tape', (seed) => tape({ spacing: 2.4 + 0.2 * seed })],
  ['mat', (seed) => round({ sectors: 48, parts: 12, rings: 14, innerRadius: 12, turn: seed })],
];

console.log('pattern              sigma  ground  lines   worse structures  missing: recall  precision');
for (const [name, patternOf] of kinds) {
  for (const sigma of [0.15, 0.2, 0.25]) {
    const all = Array.from({ length: SEEDS }, (_, k) => {
      const known = byHand(patternOf(k + 1), sigma, seededRandom(100 * sigma + k));
      return measure(known, findRegularity(known.pattern.pins));
    });
    console.log(
      [
        name.padEnd(20),
        sigma.toFixed(2).padEnd(6),
        mean(all.map((one) => one.ratio(lattice))).padEnd(7),
        mean(all.map((one) => one.ratio(runs))).padEnd(7),
        `${sum(all, 'worse')} of ${sum(all, 'structures')}`.padEnd(17),
        share(sum(all, 'found'), sum(all, 'determined')).padEnd(16),
        share(sum(all, 'right'), sum(all, 'proposed')),
      ].join(' '),
    );
  }
}

console.log('\npins     kind     seconds   x triangulation');
for (const count of [1_000, 10_000, 100_000]) {
  for (const [name, known] of [
    ['edging', longEdging(count)],
    ['tape', longTape(count)],
  ] as const) {
    const pins = jitter(known, 0.15, seededRandom(count)).pattern.pins.slice(0, count);
    const own = fastest(count > 50_000 ? 1 : 3, () => findRegularity(pins));
    const flat = Float64Array.from(pins.flatMap(({ x, y }) => [x, y]));
    const peer = fastest(3, () => new Delaunator(flat));
    console.log(
      `${String(pins.length).padEnd(8)} ${name.padEnd(8)} ${own.toFixed(2).padEnd(9)} ${(own / peer).toFixed(0)}`,
    );
  }
}

function longEdging(count: number): KnownPattern {
  return edging({ width: 61, repeats: Math.ceil(count / 400) });
}

function longTape(count: number): KnownPattern {
  return tape({ repeats: Math.ceil(count / 110) });
}

function fastest(rounds: number, work: () => unknown): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < rounds; k++) {
    const start = performance.now();
    work();
    least = Math.min(least, (performance.now() - start) / 1000);
  }
  return least;
}

function mean(values: readonly number[]): string {
  const known = values.filter((value) => Number.isFinite(value));
  if (known.length === 0) return '-';
  return (known.reduce((total, value) => total + value, 0) / known.length).toFixed(3);
}

function sum(
  all: readonly Measured[],
  key: 'worse' | 'structures' | 'determined' | 'found' | 'proposed' | 'right',
): number {
  return all.reduce((total, one) => total + one[key], 0);
}

function share(part: number, whole: number): string {
  return whole === 0 ? '-' : (part / whole).toFixed(2);
}
