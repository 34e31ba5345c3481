import { cellArea, type LatticeFrame, latticePlace, shortestSteps } from '#base/fit/lattice.ts';
import { strongestWaves, type Wave, waveSum } from '#base/fit/spectrum.ts';
import { length, type Point } from '#base/geometry/point.ts';

/** A first guess at a lattice, and how far more of the pins stand near its nodes than chance would put there. */
export interface LatticeSeed {
  readonly frame: LatticeFrame;
  /** In standard deviations of the count that chance gives. */
  readonly excess: number;
}

/**
 * The lattice that the pins of a small window suggest, from the strongest waves they stand on; null where none
 * stands out. `spacing` is a typical distance between neighbours.
 */
export function seedLattice(pins: readonly Point[], spacing: number): LatticeSeed | null {
  if (pins.length < LEAST_PINS || !(spacing > 0)) return null;
  const centre = middle(pins);
  const xs = Float64Array.from(pins, (pin) => pin.x - centre.x);
  const ys = Float64Array.from(pins, (pin) => pin.y - centre.y);
  let reach = 0;
  for (let p = 0; p < xs.length; p++) reach = Math.max(reach, Math.hypot(xs[p]!, ys[p]!));
  const least = Math.max(4.2 / reach, (2 * Math.PI) / (6 * spacing));
  const waves = strongestWaves(xs, ys, least, (2 * Math.PI * 1.45) / spacing, 10);
  let best: LatticeSeed | null = null;
  for (let first = 0; first < waves.length; first++) {
    for (let second = first + 1; second < waves.length; second++) {
      const frame = frameOf(waves[first]!, waves[second]!, xs, ys);
      if (frame === null) continue;
      const excess = excessNearNodes(frame, xs, ys);
      if (best === null || excess > best.excess * 1.02) best = { frame, excess };
    }
  }
  if (best === null || best.excess < LEAST_EXCESS) return null;
  const { origin, a, b } = best.frame;
  return { excess: best.excess, frame: { origin: { x: origin.x + centre.x, y: origin.y + centre.y }, a, b } };
}

/** Fewer pins suggest a lattice by chance too often. */
const LEAST_PINS = 12;
const LEAST_EXCESS = 4;
/** Rows farther apart than this many steps are lines side by side, not a lattice. */
const MOST_STRETCH = 2.3;
/** The disc round a node that counts as near, in parts of the square root of the cell. */
const NEAR = 0.3;

function middle(pins: readonly Point[]): Point {
  let x = 0;
  let y = 0;
  for (const pin of pins) {
    x += pin.x / pins.length;
    y += pin.y / pins.length;
  }
  return { x, y };
}

/** The lattice whose rows are the crests of two waves. */
function frameOf(one: Wave, other: Wave, xs: Float64Array, ys: Float64Array): LatticeFrame | null {
  const det = one.kx * other.ky - one.ky * other.kx;
  const sizes = Math.hypot(one.kx, one.ky) * Math.hypot(other.kx, other.ky);
  if (Math.abs(det) < 0.3 * sizes) return null;
  const turn = (2 * Math.PI) / det;
  const a = { x: other.ky * turn, y: -other.kx * turn };
  const b = { x: -one.ky * turn, y: one.kx * turn };
  const phase = ({ kx, ky }: Wave): number => {
    const [real, imaginary] = waveSum(xs, ys, kx, ky);
    return Math.atan2(imaginary, real) / (2 * Math.PI);
  };
  const u = phase(one);
  const v = phase(other);
  const steps = shortestSteps(a, b);
  if (length(steps.b) > MOST_STRETCH * length(steps.a)) return null;
  return { origin: { x: u * a.x + v * b.x, y: u * a.y + v * b.y }, ...steps };
}

function excessNearNodes(frame: LatticeFrame, xs: Float64Array, ys: Float64Array): number {
  const area = cellArea(frame);
  const near = Math.min(NEAR * Math.sqrt(area), 0.45 * length(frame.a));
  const chance = (Math.PI * near * near) / area;
  let inside = 0;
  for (let p = 0; p < xs.length; p++) {
    const { i, j } = latticePlace(frame, { x: xs[p]!, y: ys[p]! });
    const di = i - Math.round(i);
    const dj = j - Math.round(j);
    const dx = di * frame.a.x + dj * frame.b.x;
    const dy = di * frame.a.y + dj * frame.b.y;
    if (dx * dx + dy * dy < near * near) inside++;
  }
  return (inside - chance * xs.length) / Math.sqrt(xs.length * chance * (1 - chance));
}
