/**
 * Reading and writing pattern files, as ratios to named peers in the same run: JSON.parse of the same text, which is
 * the least that reading can cost, with Ajv's compiled validator of the published schema behind it; and
 * JSON.stringify. Joining two changes of a tenth of the pins is measured against comparing the patterns afresh.
 */
import Ajv2020 from 'ajv/dist/2020.js';
import { seededRandom } from '#base/random.ts';
import { changeBetween } from '#pattern/change/between.ts';
import { applyChange } from '#pattern/change/change.ts';
import { joinChanges } from '#pattern/change/join.ts';
import { patternJsonSchema } from '#pattern/file/json-schema.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';

const SEED = 127;
const SIZES = [
  { pins: 20_000, rounds: 7 },
  { pins: 100_000, rounds: 5 },
  // The most that a file may hold, once: what counts is that it ends, and in how much memory.
  { pins: 1_000_000, rounds: 1, filesOnly: true },
];

const validate = new Ajv2020().compile(patternJsonSchema() as object);
const ms = (value: number) => `${value.toFixed(0)} ms`.padEnd(10);

for (const { pins, rounds, filesOnly } of SIZES) {
  const pattern = traced(pins);
  const text = writePattern(pattern);
  const peerRead = fastest(rounds, () => validate(JSON.parse(text)));
  const read = fastest(rounds, () => readPattern(text));
  const peerWrite = fastest(rounds, () => JSON.stringify(pattern));
  const write = fastest(rounds, () => writePattern(pattern));
  console.log(`${pins} pins, ${(text.length / 1e6).toFixed(1)} MB`);
  console.log(`  read   ${ms(read)} JSON.parse and Ajv ${ms(peerRead)} x ${(read / peerRead).toFixed(2)}`);
  console.log(
    `  write  ${ms(write)} JSON.stringify     ${ms(peerWrite)} x ${(write / peerWrite).toFixed(2)}`,
  );
  if (filesOnly) continue;
  const moved = shifted(pattern, 0.1);
  const twice = shifted(moved, 0.2);
  const [first, second] = [changeBetween(pattern, moved), changeBetween(moved, twice)];
  const compare = fastest(rounds, () => changeBetween(pattern, twice));
  const join = fastest(rounds, () => joinChanges(first, second));
  const apply = fastest(rounds, () => applyChange(pattern, first));
  console.log(`  join   ${ms(join)} compare afresh     ${ms(compare)} x ${(join / compare).toFixed(2)}`);
  console.log(`  apply  ${ms(apply)}`);
}
console.log(`most memory held by the process: ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`);

/** Pins as a trace leaves them: measured diameters, confidences, a doubt now and then, full digits. */
function traced(count: number): Pattern {
  const random = seededRandom(SEED);
  const across = Math.ceil(Math.sqrt(count));
  const bare = patternFromPins(
    Array.from({ length: count }, (_, i) => ({
      x: (i % across) * 2 + random(),
      y: Math.floor(i / across) * 2 + random(),
    })),
  );
  const pins = bare.pins.map((pin) => {
    const confidence = 0.4 + 0.6 * random();
    return {
      ...pin,
      diameter: 0.4 + 0.2 * random(),
      confidence,
      ...(confidence < 0.45 && { doubt: ['faint'] as const }),
    };
  });
  return { ...bare, pins };
}

function shifted(pattern: Pattern, by: number): Pattern {
  const random = seededRandom(SEED + 1);
  return { ...pattern, pins: pattern.pins.map((pin) => (random() < 0.1 ? { ...pin, x: pin.x + by } : pin)) };
}

function fastest(rounds: number, work: () => unknown): number {
  let best = Infinity;
  for (let round = 0; round < rounds; round++) {
    globalThis.gc?.();
    const start = performance.now();
    work();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}
