import { between, distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { type Path, polyline } from '../drawing/path.ts';
import { flatten } from './flatten.ts';

/** Short bridges left in an outline, so that the card stays flat in its sheet until it is cut free by hand. */
export interface Tabs {
  readonly count: number;
  /** Each, along the outline, mm. */
  readonly width: number;
}

/**
 * The pieces of one closed outline that are cut, the tabs between them left standing; and how many tabs found a place.
 * Tabs lie on straight stretches, spread evenly, and are moved along where a corner or a hole is in the way: a hole is
 * where the outline passes within `reach` of its centre.
 */
export function outlineWithTabs(
  outline: Path,
  { count, width }: Tabs,
  holes: readonly Point[],
  reach: number,
): { paths: Path[]; tabs: number } {
  const [chain] = flatten(outline);
  if (!chain) return { paths: [], tabs: 0 };
  const way = new ClosedWay(chain.points);
  const index = new PointIndex(holes);
  const isFree = (middle: number): boolean =>
    way.isStraight(middle, width / 2 + STEP) && index.within(way.at(middle), reach + width / 2).length === 0;
  const share = way.length / count;
  const middles = Array.from({ length: count }, (_, k) => {
    const wanted = (k + 0.5) * share;
    const shift = shifts(share / 2 - width).find((step) => isFree(way.wrap(wanted + step)));
    return shift === undefined ? [] : [way.wrap(wanted + shift)];
  })
    .flat()
    .sort((one, other) => one - other);
  if (middles.length === 0) return { paths: [outline], tabs: 0 };
  const paths = middles.map((middle, k) => {
    const next = middles[k + 1] ?? middles[0]! + way.length;
    return polyline(way.between(middle + width / 2, next - width / 2));
  });
  return { paths, tabs: middles.length };
}

const STEP = 0.5;

/** Nought, then further and further to either side. */
function shifts(most: number): number[] {
  const found = [0];
  for (let step = STEP; step <= most; step += STEP) found.push(step, -step);
  return found;
}

/** A closed line of straight stretches, by the length along it. */
class ClosedWay {
  readonly #points: readonly Point[];
  /** Where each point lies along the line; the first again at its end. */
  readonly #along: readonly number[];

  constructor(points: readonly Point[]) {
    this.#points = [...points, points[0]!];
    const along = [0];
    for (let k = 1; k < this.#points.length; k++) {
      along.push(along[k - 1]! + distance(this.#points[k - 1]!, this.#points[k]!));
    }
    this.#along = along;
  }

  get length(): number {
    return this.#along.at(-1)!;
  }

  wrap(along: number): number {
    return ((along % this.length) + this.length) % this.length;
  }

  at(along: number): Point {
    const k = this.#stretch(along);
    const [from, to] = [this.#along[k]!, this.#along[k + 1]!];
    return between(this.#points[k]!, this.#points[k + 1]!, (this.wrap(along) - from) / (to - from));
  }

  /** Whether the line runs straight for so far to both sides. */
  isStraight(along: number, far: number): boolean {
    const k = this.#stretch(along);
    return this.wrap(along) - this.#along[k]! >= far && this.#along[k + 1]! - this.wrap(along) >= far;
  }

  /** The line from one place to a later one, which may lie beyond the end and so past the beginning. */
  between(from: number, to: number): Point[] {
    const corners = this.#along.slice(1).map((along, k) => [along, this.#points[k + 1]!] as const);
    const twice = [...corners, ...corners.map(([along, point]) => [along + this.length, point] as const)];
    const passed = twice.filter(([along]) => along > from && along < to).map(([, point]) => point);
    return [this.at(from), ...passed, this.at(to)];
  }

  #stretch(along: number): number {
    const place = this.wrap(along);
    const after = this.#along.findIndex((end, k) => k > 0 && place < end);
    return after < 0 ? this.#along.length - 2 : after - 1;
  }
}
