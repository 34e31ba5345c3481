import { describe, expect, it } from 'vitest';
import type { PixelPoint, Point } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import { findGimps, type TracedGimp } from '#craft/trace/gimps.ts';
import type { RoundHole } from '#craft/trace/lines/line.ts';
import { edging, fine, type KnownPattern, round, tape } from '../../support/patterns/index.ts';
import { greyOf, pixelOf, renderScan, type Scan, type ScanOptions } from '../../support/scan/index.ts';

const drawn: readonly (readonly [string, KnownPattern, ScanOptions])[] = [
  ['a printed edging with diamonds', edging({ gimp: 0.7 }), { title: 'Sampler', border: true, skew: 2 }],
  ['a copied fine piece', fine(), { style: 'photocopy', dot: 0.5, line: 0.16, title: 'Plate' }],
  [
    'a fine piece at 600 dpi under grey film',
    fine({ seed: 5 }),
    { dpi: 600, dot: 0.45, line: 0.12, film: 'grey' },
  ],
];

describe('gimps', () => {
  it.each(drawn)('are followed on %s', (_, known, options) => {
    const scan = renderScan(known, options, seededRandom(3));
    const found = findGimps(greyOf(scan), holesOf(scan));
    const mm = 25.4 / scan.truth.dpi;
    const truth = known.pattern.marks.flatMap((mark) => (mark.kind === 'gimp' ? [mark] : []));
    const meant = truth.flatMap((gimp) =>
      alongPath(gimp.path as Point[], true).map((at) => pixelOf(scan.truth, at)),
    );
    const told = found.flatMap((gimp) => alongGimp(gimp));
    expect(shareNear(meant, told, 0.35 / mm)).toBeGreaterThan(0.93);
    expect(shareNear(told, meant, 0.35 / mm)).toBeGreaterThan(0.97);
    for (const gimp of found) expect(Math.abs(gimp.width * mm - truth[0]!.width!)).toBeLessThan(0.2);
  });

  it('are closed where they go round a diamond', () => {
    const scan = renderScan(edging({ gimp: 0.7, repeats: 3 }), {}, seededRandom(3));
    expect(findGimps(greyOf(scan), holesOf(scan)).map((gimp) => gimp.closed)).toEqual([true, true, true]);
  });

  it.each([
    ['an edging in a frame with a title', edging(), { title: 'Sampler 4', border: true }],
    ['an old card', edging({ angle: 52 }), { style: 'card' }],
    ['a tape in thick lines', tape(), { line: 0.3, dot: 0.64, title: 'Tape' }],
    ['a copied mat with a knot in its centre', round(), { style: 'photocopy', dot: 0.55, title: 'Mat' }],
  ] as readonly (readonly [string, KnownPattern, ScanOptions])[])(
    'are not seen on %s',
    (_, known, options) => {
      const scan = renderScan(known, options, seededRandom(3));
      expect(findGimps(greyOf(scan), holesOf(scan))).toEqual([]);
    },
  );

  it('are none where there are no holes', () => {
    expect(findGimps({ width: 3, height: 2, grey: new Uint8Array(6) }, [])).toEqual([]);
  });
});

const holesOf = ({ truth }: Scan): RoundHole[] =>
  truth.holes.map(({ column, row, diameter }) => ({ column, row, diameter: (diameter * truth.dpi) / 25.4 }));

/** Places close together on a path whose corners are rounded off when drawn. */
function alongPath(path: readonly Point[], closed: boolean): Point[] {
  const ends = closed ? [...path, path[0]!] : path;
  return ends.slice(1).flatMap((b, k) => {
    const a = ends[k]!;
    return [0, 0.25, 0.5, 0.75].map((t) => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) }));
  });
}

const alongGimp = ({ path, closed }: TracedGimp): PixelPoint[] =>
  alongPath(
    path.map(({ column, row }) => ({ x: column, y: row })),
    closed,
  ).map(({ x, y }) => ({ column: x, row: y }));

const shareNear = (some: readonly PixelPoint[], others: readonly PixelPoint[], reach: number): number =>
  some.filter(({ column, row }) =>
    others.some((other) => Math.hypot(other.column - column, other.row - row) < reach + 2),
  ).length / some.length;
