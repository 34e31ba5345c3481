import { RAYS, STEP, STEPS, stepAt } from './rays.ts';

/** Where along each ray the dark ends half-way to the ground, and whether ground follows. */
export function findEdges(
  samples: Float32Array,
  core: number,
  bare: number,
  expected: number,
  edge: Float64Array,
  free: Uint8Array,
  dark: Uint8Array,
): void {
  const half = core + (bare - core) * 0.5;
  const first = stepAt(0.4);
  const far = stepAt(1.7);
  for (let ray = 0; ray < RAYS; ray++) {
    const from = ray * STEPS;
    edge[ray] = Number.NaN;
    free[ray] = 0;
    dark[ray] = samples[from + far]! < half ? 1 : 0;
    if (samples[from + first]! >= half) {
      edge[ray] = first * STEP * expected;
      continue;
    }
    for (let step = first + 1; step < STEPS; step++) {
      const here = samples[from + step]!;
      if (here < half) continue;
      const before = samples[from + step - 1]!;
      const place = step - 1 + (half - before) / (here - before);
      edge[ray] = place * STEP * expected;
      const until = Math.min(STEPS - 1, Math.ceil(place + 0.45 / STEP));
      let stays = place * STEP < 1.7 ? 1 : 0;
      for (let next = step + 1; next <= until; next++) if (samples[from + next]! < half) stays = 0;
      free[ray] = stays;
      break;
    }
  }
}

/**
 * Where a mark runs on beyond the rim but is lighter than the dot, as thin lines and pencil are, the rim shows as
 * a step in the darkness along the ray.
 */
export function seeThrough(
  samples: Float32Array,
  core: number,
  bare: number,
  expected: number,
  edge: Float64Array,
  free: Uint8Array,
  facing: Float64Array,
): void {
  const from = stepAt(1.5);
  const to = stepAt(1.9);
  for (let ray = 0; ray < RAYS; ray++) {
    if (free[ray]) continue;
    const at = ray * STEPS;
    let mark = 0;
    for (let step = from; step <= to; step++) mark += samples[at + step]!;
    mark /= to - from + 1;
    const step = (mark - core) / Math.max(1, bare - core);
    if (step < 0.1) continue;
    const level = (core + mark) / 2;
    for (let here = stepAt(0.4) + 1; here < from; here++) {
      const value = samples[at + here]!;
      if (value < level) continue;
      const before = samples[at + here - 1]!;
      if (before < level) {
        edge[ray] = (here - 1 + (level - before) / (value - before)) * STEP * expected;
        facing[ray] = 0.8 * Math.min(1, 2 * step);
      }
      break;
    }
  }
}

/** A rim faces its centre; the flank of a line that runs into it does not, and seen from there its edge slopes. */
export function weighFacing(edge: Float64Array, free: Uint8Array, facing: Float64Array): void {
  for (let ray = 0; ray < RAYS; ray++) {
    const before = (ray + RAYS - 1) % RAYS;
    const after = (ray + 1) % RAYS;
    facing[ray] = 0;
    if (!free[ray]) continue;
    let slope: number;
    if (free[before] && free[after]) slope = (edge[after]! - edge[before]!) / 2;
    else if (free[before]) slope = edge[ray]! - edge[before]!;
    else if (free[after]) slope = edge[after]! - edge[ray]!;
    else continue;
    const tangent = (slope * RAYS) / (2 * Math.PI * edge[ray]!);
    const root = 1 + (tangent / 0.7) ** 2;
    facing[ray] = (1 / (root * root)) * (free[before] && free[after] ? 1 : 0.5);
  }
}
