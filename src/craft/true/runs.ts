import { quantile } from '#base/fit/robust.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { type Chain, LEAST_CHAIN } from './chain.ts';
import type { Field } from './field.ts';
import { fitRun, type RunFit } from './run-fit.ts';

/** A run with its pins in order and the course they should keep to. */
export interface TrueRun {
  readonly chain: Chain;
  readonly fit: RunFit;
}

/**
 * Chains cut at their corners and laid on true courses. `sigma` is the jitter known from lattices, or null; where it
 * is null the runs tell it themselves.
 */
export function fitRuns(
  field: Field,
  chains: readonly Chain[],
  sigma: number | null,
  copiesOf: ReadonlyMap<number, number>,
): { runs: TrueRun[]; sigma: number | null; quietest: number | null } {
  const whole = chains.map((chain) => chain.pins.map((pin) => field.pins[pin]!));
  const first =
    sigma === null ? chains.map((chain, c) => ({ chain, fit: fitRun(whole[c]!, chain, null) })) : [];
  const noise = sigma ?? noiseOfRuns(first, 0.5);
  const runs = chains.flatMap((chain) => {
    const sigmaOf = (part: Chain): number | null =>
      noise === null ? null : noise * steadiness(part, copiesOf);
    const whole = laid(field, chain, sigmaOf(chain));
    if (noise !== null && whole.length > 0 && isPlain(whole[0]!)) return whole;
    return cutAtStrides(field, chain, noise ?? 0)
      .flatMap((part) => cutAtCorners(field, part, noise ?? 0))
      .flatMap((part) => laid(field, part, sigmaOf(part)));
  });
  return { runs, sigma: noise, quietest: sigma ?? noiseOfRuns(first, 0.2) };
}

/** The jitter that is left where a chain's pins are means over their copies, in parts of that of one pin. */
function steadiness({ pins }: Chain, copiesOf: ReadonlyMap<number, number>): number {
  let variance = 0;
  for (const pin of pins) variance += 1 / (copiesOf.get(pin) ?? 1) / pins.length;
  return Math.sqrt(variance);
}

/** A course that spends this little on all its pins has no jump or corner in it that jitter would not explain. */
const PLAIN = 0.2;

const isPlain = ({ chain, fit }: TrueRun): boolean => fit.freedom < PLAIN * 2 * chain.pins.length;

/** Chains whose pins stray this much farther than the pattern's jitter follow no true course. */
const MOST_NOISE = 1.8;

/** Jitter per coordinate from the residuals of runs: that of the pin a share `q` up from the quietest. */
function noiseOfRuns(runs: readonly TrueRun[], q: number): number | null {
  const each = runs.flatMap(({ chain, fit }) => {
    const left = 2 * chain.pins.length - fit.freedom;
    return left >= 4 ? new Array<number>(chain.pins.length).fill(Math.sqrt(fit.squares / left)) : [];
  });
  return each.length === 0 ? null : quantile(each, q);
}

/** How much longer or shorter than its neighbours a link may be, as a logarithm, before jitter is counted. */
const MOST_STRIDE = 0.3;
const STRIDE_WINDOW = 4;

/** Cuts a chain where a link is much longer or shorter than those round it: there it jumps from one line to another. */
function cutAtStrides(field: Field, chain: Chain, sigma: number): Chain[] {
  const n = chain.pins.length;
  const links = chain.steps.map((step, k) => {
    const from = field.pins[chain.pins[k]!]!;
    return distance(from, field.pins[chain.pins[(k + 1) % n]!]!) / step;
  });
  const cuts = links.flatMap((link, k) => {
    const around = links.slice(Math.max(0, k - STRIDE_WINDOW), k + STRIDE_WINDOW + 1);
    const usual = quantile(around, 0.5);
    // A link is the difference of two jitters; three deviations of that are not yet a stride.
    const most = MOST_STRIDE + (3 * Math.SQRT2 * sigma) / usual / (chain.steps[k] === 2 ? 2 : 1);
    return Math.abs(Math.log(link / usual)) > Math.min(most, 0.62) ? [k] : [];
  });
  return cuts.length === 0 ? [chain] : cutLinks(chain, cuts);
}

/** The parts of a chain without some of its links, named by the pin they go out from. */
function cutLinks({ pins, steps, closed }: Chain, cuts: readonly number[]): Chain[] {
  const n = pins.length;
  const start = closed ? (cuts[0]! + 1) % n : 0;
  const isCut = new Set(cuts);
  const parts: Chain[] = [];
  let own: { pins: number[]; steps: number[] } = { pins: [], steps: [] };
  for (let k = 0; k < n; k++) {
    const at = (start + k) % n;
    own.pins.push(pins[at]!);
    if (k === n - 1 || isCut.has(at)) {
      parts.push({ ...own, closed: false });
      own = { pins: [], steps: [] };
    } else own.steps.push(steps[at]!);
  }
  return parts;
}

/** A course whose steps vary more than this part of them is no true one: the pins are of several lines. */
const MOST_UNEVEN = 0.15;

function isUneven({ chain, fit }: TrueRun): boolean {
  const steps = fit.places.slice(1).map((place, k) => distance(place, fit.places[k]!) / chain.steps[k]!);
  const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
  const squares = steps.reduce((sum, step) => sum + (step - mean) ** 2, 0);
  return Math.sqrt(squares / steps.length) > MOST_UNEVEN * mean;
}

function laid(field: Field, chain: Chain, sigma: number | null): TrueRun[] {
  const points = chain.pins.map((pin) => field.pins[pin]!);
  if (points.length < LEAST_CHAIN) return [];
  const fit = fitRun(points, chain, sigma);
  const left = 2 * points.length - fit.freedom;
  const noise = Math.sqrt(fit.squares / Math.max(left, 1));
  if (isUneven({ chain, fit })) return [];
  return sigma !== null && noise > MOST_NOISE * sigma + 1e-6 ? [] : [{ chain, fit }];
}

/** Turn at a pin minus the usual turn round it, in radians, beyond which it is a corner whatever the jitter. */
const LEAST_CORNER = 0.42;

/** Cuts a chain at pins where it turns much more than on either side; the corner pin ends both parts' smoothing. */
function cutAtCorners(field: Field, chain: Chain, sigma: number): Chain[] {
  const points = chain.pins.map((pin) => field.pins[pin]!);
  const n = points.length;
  const turns = points.map((_, k) => turnAt(points, k, chain.closed));
  const step = stepOf(points);
  // A turn is made of three pins' jitter: its variance is 6 sigma^2 / step^2.
  const limit = Math.max(LEAST_CORNER, (3.2 * Math.sqrt(6) * sigma) / step);
  const corners: number[] = [];
  for (let k = 0; k < n; k++) {
    if (!chain.closed && (k === 0 || k === n - 1)) continue;
    const around = [-3, -2, 2, 3]
      .map((d) => (chain.closed ? turns[(k + d + n) % n] : turns[k + d]))
      .filter((turn) => turn !== undefined);
    const usual = around.length === 0 ? 0 : around.toSorted((a, b) => a - b)[around.length >> 1]!;
    if (Math.abs(turns[k]! - usual) > limit) corners.push(k);
  }
  if (corners.length === 0) return [chain];
  return partsBetween(chain, corners);
}

function partsBetween(chain: Chain, corners: readonly number[]): Chain[] {
  const n = chain.pins.length;
  const first = chain.closed ? corners[0]! : 0;
  const order = chain.closed
    ? Array.from({ length: n }, (_, k) => (first + k) % n)
    : chain.pins.map((_, k) => k);
  const isCorner = new Set(corners);
  const parts: Chain[] = [];
  let pins: number[] = [];
  let steps: number[] = [];
  order.forEach((k, place) => {
    pins.push(chain.pins[k]!);
    const last = place === order.length - 1;
    if (!last && !(isCorner.has(k) && pins.length > 1)) {
      steps.push(chain.steps[k]!);
      return;
    }
    parts.push({ pins, steps, closed: false });
    pins = [];
    steps = [];
  });
  return parts;
}

function turnAt(points: readonly Point[], k: number, closed: boolean): number {
  const n = points.length;
  if (!closed && (k === 0 || k === n - 1)) return 0;
  const before = points[(k - 1 + n) % n]!;
  const here = points[k]!;
  const after = points[(k + 1) % n]!;
  const ux = here.x - before.x;
  const uy = here.y - before.y;
  const vx = after.x - here.x;
  const vy = after.y - here.y;
  return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
}

const stepOf = (points: readonly Point[]): number => {
  const steps = points.slice(1).map((point, k) => distance(point, points[k]!));
  return quantile(steps, 0.5) || 1;
};
