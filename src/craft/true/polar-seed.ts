import { quantile } from '#base/fit/robust.ts';
import type { Point } from '#base/geometry/point.ts';

/** A first guess at a polar lattice. */
export interface PolarSeed {
  readonly centre: Point;
  readonly sectors: number;
}

/** A round that the pattern itself tells, and how far its pins stray from it, mm (a standard deviation). */
export interface KnownRound extends PolarSeed {
  readonly sigma: number;
}

/**
 * How many sectors stand round `centre`, from waves in the plane of angle and logarithm of radius, where rings that
 * grow in proportion are as regular as a lattice; null where none stands out. The centre may be wrong by a pin's
 * distance and is bettered.
 */
export function seedPolar(pins: readonly Point[], centre: Point, spacing: number): PolarSeed | null {
  if (pins.length < LEAST_PINS) return null;
  const sectors = countSectors(pins, centre, spacing);
  if (sectors === null) return null;
  const better = climb(pins, centre, sectors, spacing);
  // With the centre in its place the count is surer.
  const again = countSectors(pins, better, spacing);
  return again === null ? null : { centre: climb(pins, better, again, spacing / 4), sectors: again };
}

const LEAST_PINS = 40;
const LEAST_SECTORS = 8;
const MOST_SECTORS = 720;
const WINDOW = 160;
/** Share of the pins of a window that must stand on the crests, net of what chance gives. */
const LEAST_SHARE = 0.12;

interface PolarPlace {
  readonly u: number;
  readonly angle: number;
  readonly radius: number;
}

function countSectors(pins: readonly Point[], centre: Point, spacing: number): number | null {
  const places = pins
    .map(({ x, y }): PolarPlace => {
      const radius = Math.hypot(x - centre.x, y - centre.y);
      return { u: Math.log(radius), radius, angle: Math.atan2(y - centre.y, x - centre.x) };
    })
    .filter(({ radius }) => radius > 2 * spacing)
    .sort((p, q) => p.radius - q.radius);
  const power = new Float64Array(MOST_SECTORS + 1);
  let asked = 0;
  const step = Math.max(WINDOW, Math.floor(places.length / MOST_WINDOWS));
  for (let start = 0; start + WINDOW / 2 <= places.length; start += step) {
    const window = places.slice(start, start + WINDOW);
    asked += window.length;
    addPower(window, power);
  }
  let best = 0;
  for (let m = LEAST_SECTORS; m <= MOST_SECTORS; m++) if (power[m]! > power[best]!) best = m;
  return best > 0 && power[best]! > LEAST_SHARE * asked ? best : null;
}

const MOST_WINDOWS = 12;

/** Adds, for each count of sectors, the power of its strongest wave over what the luckiest of chance waves has. */
function addPower(window: readonly PolarPlace[], power: Float64Array): void {
  const n = window.length;
  const middle = window[n >> 1]!;
  const depth = Math.max(window.at(-1)!.u - window[0]!.u, 1e-6);
  // Mean area a pin in (u, angle), hence the mean step there.
  const step = Math.sqrt((depth * 2 * Math.PI) / n);
  const most = Math.min(MOST_SECTORS, Math.ceil((2 * Math.PI * 0.95) / step));
  const across = 3.2 / depth;
  const half = Math.ceil((2 * Math.PI * 0.95) / step / across);
  const cosU = new Float64Array((2 * half + 1) * n);
  const sinU = new Float64Array((2 * half + 1) * n);
  for (let k = -half; k <= half; k++) {
    window.forEach(({ u }, p) => {
      cosU[(k + half) * n + p] = Math.cos(k * across * (u - middle.u));
      sinU[(k + half) * n + p] = Math.sin(k * across * (u - middle.u));
    });
  }
  const luck = Math.log((2 * half + 1) * most) + 2;
  const cosM = new Float64Array(n);
  const sinM = new Float64Array(n);
  for (let m = LEAST_SECTORS; m <= most; m++) {
    window.forEach(({ angle }, p) => {
      cosM[p] = Math.cos(m * angle);
      sinM[p] = Math.sin(m * angle);
    });
    let strongest = 0;
    for (let row = 0; row < cosU.length; row += n) {
      let real = 0;
      let imaginary = 0;
      for (let p = 0; p < n; p++) {
        real += cosM[p]! * cosU[row + p]! - sinM[p]! * sinU[row + p]!;
        imaginary += cosM[p]! * sinU[row + p]! + sinM[p]! * cosU[row + p]!;
      }
      strongest = Math.max(strongest, (real * real + imaginary * imaginary) / n);
    }
    power[m]! += Math.max(0, strongest - luck);
  }
}

/**
 * How sharply the pins stand at multiples of half a sector, 0 to 1, with the phase (in sectors, 0 to one half).
 * Rings that are shifted by half a sector against each other count alike.
 */
export function halfSectorPhase(
  pins: readonly Point[],
  centre: Point,
  sectors: number,
): { share: number; phase: number } {
  let real = 0;
  let imaginary = 0;
  let all = 0;
  for (const { x, y } of pins) {
    const dx = x - centre.x;
    const dy = y - centre.y;
    // Near the centre a sector is narrow against the jitter and says little.
    const weight = Math.hypot(dx, dy);
    const turn = 2 * sectors * Math.atan2(dy, dx);
    real += weight * Math.cos(turn);
    imaginary += weight * Math.sin(turn);
    all += weight;
  }
  const phase = Math.atan2(imaginary, real) / (4 * Math.PI);
  return { share: Math.hypot(real, imaginary) / all, phase: phase < 0 ? phase + 0.5 : phase };
}

function climb(pins: readonly Point[], from: Point, sectors: number, reach: number): Point {
  const sample = pins.length > 1500 ? pins.filter((_, k) => k % Math.ceil(pins.length / 1500) === 0) : pins;
  const far = quantile(
    sample.map(({ x, y }) => Math.hypot(x - from.x, y - from.y)),
    0.6,
  );
  // Half a sector's arc is the width of the hill; a grid of a third of it cannot miss the top.
  const hill = (Math.PI * far) / sectors;
  let best = from;
  let top = halfSectorPhase(sample, from, sectors).share;
  const rounds = Math.min(6, Math.ceil(reach / (hill / 3)));
  for (let step = hill / 3, grid = rounds; step > hill / 2000; step /= 2, grid = 1) {
    const middle = best;
    for (let i = -grid; i <= grid; i++) {
      for (let j = -grid; j <= grid; j++) {
        const there = { x: middle.x + i * step, y: middle.y + j * step };
        const { share } = halfSectorPhase(sample, there, sectors);
        if (share > top) {
          top = share;
          best = there;
        }
      }
    }
  }
  return best;
}
