import type { GreyPicture } from '#base/picture/grey.ts';

/** How many rays look out from a candidate's centre. */
export const RAYS = 48;
/** Samples a ray, from the centre outwards. */
const STEPS = 22;
/** Length of a ray in expected radii. */
const REACH = 2.2;
const COS = Float64Array.from({ length: RAYS }, (_, ray) => Math.cos((2 * Math.PI * ray) / RAYS));
const SIN = Float64Array.from({ length: RAYS }, (_, ray) => Math.sin((2 * Math.PI * ray) / RAYS));

/** What lies round a candidate, as seen along rays from its fitted centre. Lengths are pixels. */
export interface Rim {
  readonly column: number;
  readonly row: number;
  /** Of the circle fitted to the free rays. */
  readonly radius: number;
  /** For each ray, where the dark ends; NaN where it does not end within reach. */
  readonly edge: Float64Array;
  /** For each ray, 1 where bare ground follows the edge, else 0: a line or another mark runs on. */
  readonly free: Uint8Array;
  /** For each ray, 1 where it is free and its edge lies on the circle. */
  readonly fits: Uint8Array;
  /** For each ray, 1 where it is dark at 1.7 expected radii, else 0. */
  readonly dark: Uint8Array;
  /** Grey of the middle, of the bare ground round it, and of the marks that touch it (NaN without any). */
  readonly core: number;
  readonly ground: number;
  readonly marks: number;
  /** Least darkness in the inner two thirds, as a share of core against ground; low where the disc has a hole. */
  readonly fill: number;
  /** Mean darkness between 1.4 and 2 expected radii, as a share of core against ground. */
  readonly about: number;
}

export function readRim(
  picture: GreyPicture,
  start: { column: number; row: number },
  expected: number,
  ground: number,
  depth: number,
): Rim {
  const samples = new Float32Array(RAYS * STEPS);
  const edge = new Float64Array(RAYS);
  const free = new Uint8Array(RAYS);
  const fits = new Uint8Array(RAYS);
  const dark = new Uint8Array(RAYS);
  const facing = new Float64Array(RAYS);
  let { column, row } = start;
  let radius = expected;
  let core = ground - depth;
  let bare = ground;
  for (let round = 0; round < 4; round++) {
    sampleRays(picture, column, row, expected, samples);
    core = coreOf(samples);
    bare = bareOf(samples, edge, round > 0 ? free : null, expected, ground);
    findEdges(samples, core, bare, expected, edge, free, dark);
    weighFacing(edge, free, facing);
    seeThrough(samples, core, bare, expected, edge, free, facing);
    const fit = fitCircle(edge, facing, free, expected, fits, round);
    const limit = 0.5 * expected;
    column += Math.max(-limit, Math.min(limit, fit.x));
    row += Math.max(-limit, Math.min(limit, fit.y));
    radius = fit.radius;
    if (round >= 2 && Math.hypot(fit.x, fit.y) < 0.02) break;
  }
  return {
    column,
    row,
    radius,
    edge,
    free,
    fits,
    dark,
    core,
    ground: bare,
    marks: marksOf(samples, dark),
    fill: fillOf(samples, core, bare),
    about: aboutOf(samples, core, bare),
  };
}

const STEP = REACH / (STEPS - 1);
/** The sample at so many expected radii. */
const stepAt = (radii: number): number => Math.round(radii / STEP);

function sampleRays(
  picture: GreyPicture,
  column: number,
  row: number,
  expected: number,
  to: Float32Array,
): void {
  const { width, height, grey } = picture;
  const reach = REACH * expected + 1;
  const inside =
    column - reach >= 0 && row - reach >= 0 && column + reach < width - 1 && row + reach < height - 1;
  for (let ray = 0; ray < RAYS; ray++) {
    const dx = COS[ray]! * STEP * expected;
    const dy = SIN[ray]! * STEP * expected;
    for (let step = 0; step < STEPS; step++) {
      let x = column + dx * step;
      let y = row + dy * step;
      if (!inside) {
        x = Math.max(0, Math.min(width - 1.001, x));
        y = Math.max(0, Math.min(height - 1.001, y));
      }
      const left = Math.floor(x);
      const top = Math.floor(y);
      const at = top * width + left;
      const fx = x - left;
      const fy = y - top;
      const upper = grey[at]! * (1 - fx) + (grey[at + 1] ?? 0) * fx;
      const lower = (grey[at + width] ?? 0) * (1 - fx) + (grey[at + width + 1] ?? 0) * fx;
      to[ray * STEPS + step] = upper * (1 - fy) + lower * fy;
    }
  }
}

function coreOf(samples: Float32Array): number {
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
function bareOf(
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

function findEdges(
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
function seeThrough(
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
function weighFacing(edge: Float64Array, free: Uint8Array, facing: Float64Array): void {
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

/**
 * Centre and radius of the circle through the free edges, blind to lines: rays that leave the circle are weighed
 * down (Tukey's biweight), and the radius is held near the page's own, so that even a third of a rim is enough.
 * Linear in the shift, since the edge at angle a lies at `radius + x cos a + y sin a`.
 */
function fitCircle(
  edge: Float64Array,
  facing: Float64Array,
  free: Uint8Array,
  expected: number,
  fits: Uint8Array,
  round: number,
): { x: number; y: number; radius: number } {
  let x = 0;
  let y = 0;
  let radius = expected;
  // lines only ever add ink: edges beyond the circle are trusted less than edges within it
  const within = (round === 0 ? 0.5 : 0.8) * expected;
  const beyond = (round === 0 ? 0.5 : 0.4) * expected;
  for (let pass = 0; pass < 4; pass++) {
    let w0 = 0.06 * RAYS;
    let wx = 0;
    let wy = 0;
    let wxx = 0.06 * RAYS;
    let wyy = 0.06 * RAYS;
    let wxy = 0;
    let s0 = w0 * expected;
    let sx = 0;
    let sy = 0;
    for (let ray = 0; ray < RAYS; ray++) {
      if (facing[ray] === 0) continue;
      const cos = COS[ray]!;
      const sin = SIN[ray]!;
      const gap = edge[ray]! - radius - x * cos - y * sin;
      const off = gap / (gap > 0 ? beyond : within);
      if (off <= -1 || off >= 1) continue;
      const root = 1 - off * off;
      const weight = root * root * facing[ray]!;
      w0 += weight;
      wx += weight * cos;
      wy += weight * sin;
      wxx += weight * cos * cos;
      wyy += weight * sin * sin;
      wxy += weight * cos * sin;
      s0 += weight * edge[ray]!;
      sx += weight * edge[ray]! * cos;
      sy += weight * edge[ray]! * sin;
    }
    const c0 = wxx * wyy - wxy * wxy;
    const c1 = wx * wyy - wxy * wy;
    const c2 = wx * wxy - wxx * wy;
    const det = w0 * c0 - wx * c1 + wy * c2;
    radius = (s0 * c0 - wx * (sx * wyy - wxy * sy) + wy * (sx * wxy - wxx * sy)) / det;
    x = (w0 * (sx * wyy - wxy * sy) - s0 * c1 + wy * (wx * sy - sx * wy)) / det;
    y = (w0 * (wxx * sy - sx * wxy) - wx * (wx * sy - sx * wy) + s0 * c2) / det;
  }
  for (let ray = 0; ray < RAYS; ray++) {
    const off = edge[ray]! - radius - x * COS[ray]! - y * SIN[ray]!;
    fits[ray] = free[ray] && Math.abs(off) < 0.2 * expected ? 1 : 0;
  }
  return { x, y, radius };
}

function marksOf(samples: Float32Array, dark: Uint8Array): number {
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

function fillOf(samples: Float32Array, core: number, bare: number): number {
  let lightest = 0;
  for (let step = 0; step <= stepAt(0.65); step++) {
    for (let ray = 0; ray < RAYS; ray += 2) lightest = Math.max(lightest, samples[ray * STEPS + step]!);
  }
  return (bare - lightest) / Math.max(1, bare - core);
}

function aboutOf(samples: Float32Array, core: number, bare: number): number {
  let sum = 0;
  let count = 0;
  for (let step = stepAt(1.4); step <= stepAt(2); step++) {
    for (let ray = 0; ray < RAYS; ray += 2) {
      sum += samples[ray * STEPS + step]!;
      count++;
    }
  }
  return (bare - sum / count) / Math.max(1, bare - core);
}
