import { RAYS, STEP, STEPS, stepAt } from './rays.ts';

/** Mean grey of the middle. */
export function coreOf(samples: Float32Array): number {
  let sum = 0;
  let count = 0;
  const last = stepAt(0.45);
  for (let ray = 0; ray < RAYS; ray += 3) {
    for (let step = 1; step <= last; step++) {
      sum += samples[ray * STEPS + step]!;
      count++;
    }
  }
  return sum / count;
}

/** Median of what follows the free edges; before any edge is known, of the lighter third round about. */
export function bareOf(
  samples: Float32Array,
  edge: Float64Array,
  free: Uint8Array | null,
  expected: number,
  ground: number,
): number {
  TALLY.fill(0);
  let count = 0;
  for (let ray = 0; ray < RAYS; ray++) {
    if (free && !free[ray]) continue;
    const from = free ? Math.ceil((edge[ray]! / expected + 0.35) / STEP) : stepAt(1.5);
    for (let step = from; step < Math.min(from + 4, STEPS); step++) {
      TALLY[samples[ray * STEPS + step]! | 0]!++;
      count++;
    }
  }
  if (count < 12) return ground;
  let rank = Math.floor(count * (free ? 0.5 : 0.7));
  let grey = 0;
  while (rank >= TALLY[grey]!) rank -= TALLY[grey++]!;
  return grey + (rank + 0.5) / TALLY[grey]!;
}

/** Greys from 0 to 255 counted; scratch space that lives only within one call. */
const TALLY = new Uint16Array(256);

/** Mean grey of the marks that run on beyond the rim; NaN without any. */
export function marksOf(samples: Float32Array, dark: Uint8Array): number {
  let sum = 0;
  let count = 0;
  const far = stepAt(1.7);
  for (let ray = 0; ray < RAYS; ray++) {
    if (!dark[ray]) continue;
    sum += samples[ray * STEPS + far]!;
    count++;
  }
  return count ? sum / count : Number.NaN;
}
