/**
 * The structure factor of plane points: how strongly they stand on the crests of a plane wave.
 * A lattice shows as sharp peaks at its reciprocal vectors, however many of its nodes lack or have strayed a little:
 * jitter of standard deviation s only dims a peak by exp(-k^2 s^2) (the Debye-Waller factor of crystallography).
 */
export interface Wave {
  /** Wave vector, radians a millimetre. */
  readonly kx: number;
  readonly ky: number;
  /** |sum of exp(i k.p)|^2 / n: about 1 for points at random, n for points all on the crests. */
  readonly power: number;
}

/**
 * The strongest waves with `least <= |k| <= most`, strongest first, one of each pair k and -k.
 * Give the points round their middle: the grid step follows from how far out they reach.
 */
export function strongestWaves(
  xs: Float64Array,
  ys: Float64Array,
  least: number,
  most: number,
  count: number,
): Wave[] {
  const n = xs.length;
  let reach = 0;
  for (let p = 0; p < n; p++) reach = Math.max(reach, Math.hypot(xs[p]!, ys[p]!));
  if (n === 0 || reach === 0) return [];
  const step = Math.max(WIDTH_OF_PEAK / reach, most / MOST_STEPS);
  const half = Math.ceil(most / step);
  const grid = powerGrid(xs, ys, step, half);
  const high = 2 * half + 1;
  const at = (i: number, j: number): number => {
    if (i < 0) return at(-i, -j);
    return i > half || Math.abs(j) > half ? 0 : grid[i * high + j + half]!;
  };
  const peaks: Wave[] = [];
  for (let i = 0; i <= half; i++) {
    for (let j = i === 0 ? 1 : -half; j <= half; j++) {
      const size = Math.hypot(i, j) * step;
      if (size < least || size > most) continue;
      const here = at(i, j);
      if (here < LEAST_POWER || !isTop(at, i, j, here)) continue;
      peaks.push({ kx: i * step, ky: j * step, power: here });
    }
  }
  peaks.sort((a, b) => b.power - a.power);
  if (peaks.length === 0 || peaks[0]!.power < LEAST_TOP + LEAST_SHARE * n) return [];
  return peaks
    .slice(0, count)
    .map((peak) => climb(xs, ys, peak, step))
    .sort((a, b) => b.power - a.power);
}

/** Sum of exp(i k.p): its real and imaginary part. The phase of a lattice's peak is k times the lattice's origin. */
export function waveSum(xs: Float64Array, ys: Float64Array, kx: number, ky: number): [number, number] {
  let real = 0;
  let imaginary = 0;
  for (let p = 0; p < xs.length; p++) {
    const phase = kx * xs[p]! + ky * ys[p]!;
    real += Math.cos(phase);
    imaginary += Math.sin(phase);
  }
  return [real, imaginary];
}

/** Half a peak's width times the reach of the points: a grid this fine cannot step over a peak. */
const WIDTH_OF_PEAK = 1.6;
const MOST_STEPS = 60;
/** Points at random pass this once in a hundred waves. */
const LEAST_POWER = 4.5;

/** The strongest wave must rise above the luckiest of thousands of chance ones, and carry a share of the points. */
const LEAST_TOP = 7;
const LEAST_SHARE = 0.03;

function powerGrid(xs: Float64Array, ys: Float64Array, step: number, half: number): Float64Array {
  const n = xs.length;
  const high = 2 * half + 1;
  const grid = new Float64Array((half + 1) * high);
  const cosY = new Float64Array(high * n);
  const sinY = new Float64Array(high * n);
  for (let j = 0; j < high; j++) {
    for (let p = 0; p < n; p++) {
      const phase = (j - half) * step * ys[p]!;
      cosY[j * n + p] = Math.cos(phase);
      sinY[j * n + p] = Math.sin(phase);
    }
  }
  const cosX = new Float64Array(n);
  const sinX = new Float64Array(n);
  for (let i = 0; i <= half; i++) {
    for (let p = 0; p < n; p++) {
      cosX[p] = Math.cos(i * step * xs[p]!);
      sinX[p] = Math.sin(i * step * xs[p]!);
    }
    for (let j = 0; j < high; j++) {
      let real = 0;
      let imaginary = 0;
      for (let p = 0, q = j * n; p < n; p++, q++) {
        real += cosX[p]! * cosY[q]! - sinX[p]! * sinY[q]!;
        imaginary += cosX[p]! * sinY[q]! + sinX[p]! * cosY[q]!;
      }
      grid[i * high + j] = (real * real + imaginary * imaginary) / n;
    }
  }
  return grid;
}

function isTop(at: (i: number, j: number) => number, i: number, j: number, here: number): boolean {
  for (let di = -1; di <= 1; di++) {
    for (let dj = -1; dj <= 1; dj++) if ((di !== 0 || dj !== 0) && at(i + di, j + dj) > here) return false;
  }
  return true;
}

function climb(xs: Float64Array, ys: Float64Array, from: Wave, gridStep: number): Wave {
  const powerAt = (kx: number, ky: number): number => {
    const [real, imaginary] = waveSum(xs, ys, kx, ky);
    return (real * real + imaginary * imaginary) / xs.length;
  };
  let { kx, ky } = from;
  let power = powerAt(kx, ky);
  for (let step = gridStep / 2; step > gridStep / 100; step /= 2) {
    for (let moved = true, tries = 0; moved && tries < 4; tries++) {
      moved = false;
      for (const [dx, dy] of COMPASS) {
        const there = powerAt(kx + dx * step, ky + dy * step);
        if (there > power) {
          power = there;
          kx += dx * step;
          ky += dy * step;
          moved = true;
        }
      }
    }
  }
  return { kx, ky, power };
}

const COMPASS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;
