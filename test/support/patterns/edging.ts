import type { Point } from '#base/geometry/point.ts';
import { PatternBuilder } from './builder.ts';
import { evenly, sample } from './curve.ts';
import type { KnownPattern, Role } from './known.ts';

export interface EdgingOptions {
  /** Footside spacing, mm. */
  readonly spacing?: number;
  /** Angle of the ground to the footside, degrees. */
  readonly angle?: number;
  readonly repeats?: number;
  /** Length of a repeat in footside spacings, 6 or more. */
  readonly length?: number;
  /** Width of the ground at its narrowest, in half spacings, 9 or more. */
  readonly width?: number;
  /** How far a fan stands out, in footside spacings. */
  readonly bulge?: number;
  /** How far the footside pins stand outside the lattice, as a share of a column. */
  readonly footShift?: number;
  /** Tint of the cloth-stitch diamonds, '#rrggbb'. */
  readonly tint?: string;
  /** Width of a gimp round each diamond, mm; none by default. */
  readonly gimp?: number;
}

/**
 * An edging on a lattice: a straight footside on the left, ground with cloth-stitch diamonds and spiders, and fans
 * at the headside. Lattice places are counted in half spacings: column i, row j, with i + j even.
 */
export function edging(options: EdgingOptions = {}): KnownPattern {
  const { spacing = 5, angle = 45, repeats = 4, bulge = 1.5, footShift = 0.3, tint } = options;
  const period = 2 * Math.max(6, Math.round(options.length ?? 6));
  const width = even(Math.max(9, options.width ?? 9) + period / 2) - period / 2;
  const rowStep = spacing / 2;
  const columnStep = rowStep * Math.tan((angle * Math.PI) / 180);
  const rows = period * repeats;
  const peak = width + period / 2;
  // The diamond sits behind the valley between two peaks of the ground, the spider within a peak.
  const diamond = { i: width - 5, j: width - 5 + even(period / 2 - width + 5), radius: 4 };
  const spider = { i: peak - 6, j: 0, radius: 4 };
  const build = new PatternBuilder();

  const placeOf = (i: number, j: number): Point => ({ x: (i || -footShift) * columnStep, y: j * rowStep });
  const placed = (at: Point): Point => ({ x: at.x * columnStep, y: at.y * rowStep });
  const lastColumn = (j: number): number => width + Math.abs((j % period) - period / 2);
  const away = (i: number, j: number, from: { i: number; j: number }): number => {
    const row = (((j - from.j) % period) + period) % period;
    return Math.abs(i - from.i) + Math.min(row, period - row);
  };
  const roleAt = (i: number, j: number): Role | null => {
    const toSpider = away(i, j, spider);
    const toDiamond = away(i, j, diamond);
    if (i === 0) return 'foot';
    if (toSpider === 0) return 'spider';
    if (toSpider < spider.radius || toDiamond < diamond.radius) return null;
    return toDiamond === diamond.radius ? 'outline' : 'ground';
  };

  const nodes = new Map<string, number>();
  const node = (i: number, j: number): number | undefined => nodes.get(`${i} ${j}`);
  for (let j = 0; j <= rows; j++) {
    for (let i = j % 2; i <= lastColumn(j); i += 2) {
      const role = roleAt(i, j);
      if (role) nodes.set(`${i} ${j}`, build.pin(placeOf(i, j), role));
    }
  }
  const join = (from: number | undefined, to: number | undefined): void => {
    if (from !== undefined && to !== undefined) build.line(from, to);
  };
  for (let j = 0; j < rows; j++) {
    for (let i = j % 2; i <= lastColumn(j); i += 2) {
      join(node(i, j), node(i - 1, j + 1));
      join(node(i, j), node(i + 1, j + 1));
    }
  }
  build.run(
    Array.from({ length: rows / 2 + 1 }, (_, k) => node(0, 2 * k)!),
    'footside',
  );

  for (let top = 0; top <= rows; top += period) {
    for (let i = -3; i <= 3; i++) {
      for (const side of [-1, 1]) {
        join(node(spider.i, top), node(spider.i + i, top + side * (spider.radius - Math.abs(i))));
      }
    }
    const { i, radius } = diamond;
    const j = top + diamond.j;
    const corners = [node(i, j - radius), node(i + radius, j), node(i, j + radius), node(i - radius, j)];
    const anchors = corners.flatMap((corner) => (corner === undefined ? [] : [build.at(corner)]));
    if (anchors.length < 4) continue;
    build.area(anchors, 'cloth', tint);
    // The gimp runs midway between the diamond's own pins and the next ones of the ground.
    if (options.gimp !== undefined) build.gimp(diamondPath(i, j, radius + 1).map(placed), true, options.gimp);
  }

  for (let top = 0; top < rows; top += period) {
    const { x, y } = placeOf(peak, top);
    const half = (period / 2) * rowStep;
    const arc = sample(
      (t) => ({ x: x + bulge * spacing * Math.sin(t), y: y + half * (1 - Math.cos(t)) }),
      0,
      Math.PI,
    );
    const pins = evenly(arc, period + 1, false).map((point) => build.pin(point, 'fan'));
    build.run(pins, 'headside');
    for (let n = 1; n < period; n++) join(pins[n], node(lastColumn(n), top + n));
  }
  return build.finish('Edging', 'ground and fans', { step: { x: 0, y: period * rowStep }, count: repeats });
}

const even = (whole: number): number => whole + (Math.abs(whole) % 2);

/** Lattice places round a diamond's middle, its corners cut so that a thick thread can follow them. */
function diamondPath(i: number, j: number, radius: number): Point[] {
  const side = (turn: number): Point[] =>
    Array.from({ length: radius }, (_, k) => {
      const along = 0.5 + k;
      const [x, y] = [radius - along, along];
      return turn === 0
        ? { x, y }
        : turn === 1
          ? { x: -y, y: x }
          : turn === 2
            ? { x: -x, y: -y }
            : { x: y, y: -x };
    });
  return [0, 1, 2, 3].flatMap(side).map(({ x, y }) => ({ x: i + x, y: j + y }));
}
