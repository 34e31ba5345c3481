import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import type { Band, Side } from './band.ts';

/** A pin's place on an edge of a band; `number` counts spaces along the edge, `parameter` runs along the middle line. */
export interface EdgePin {
  readonly side: Side;
  readonly number: number;
  readonly parameter: number;
  readonly place: Point;
}

/** Both edges of a band can be told in one outline of an area only so far (see the limits of a pattern file). */
const MOST_ON_EDGE = 24_000;

/**
 * Pins at even arc lengths along both edges, the spacing the nearest to the wanted one that makes whole spaces. The
 * right edge is half a space behind the left, so that the workers go to and fro at one slant.
 */
export function edgePins(band: Band, at: number): Result<Readonly<Record<Side, EdgePin[]>>, DraftTrouble> {
  const { tape } = band;
  const sides: Record<Side, EdgePin[]> = { left: [], right: [] };
  for (const side of ['left', 'right'] as const) {
    const along = band.edgeLength(side);
    const parts = tape.groups * band.copies;
    const spaces = parts * Math.max(1, Math.round(along.total / (tape.spacing * parts)));
    const spacing = along.total / spaces;
    if (spacing < LEAST_SPACING) return failed(tooClose(at, tape.spacing));
    if (spaces > MOST_ON_EDGE) return failed(tooMany(at, tape.spacing, along.total));
    for (const place of slots(band, side, spaces)) {
      const parameter = place === spaces ? band.curve.spans : along.parameterAt(place * spacing);
      sides[side].push({
        side,
        number: Math.floor(place),
        parameter,
        place: band.edgePoint(side, parameter),
      });
    }
  }
  return done(sides);
}

/** How many spaces each pin of an edge lies from its beginning. */
function slots({ tape }: Band, side: Side, spaces: number): number[] {
  if (side === 'left') return Array.from({ length: spaces + (tape.closed ? 0 : 1) }, (_, k) => k);
  // At a tip the left pin serves both edges.
  const first = !tape.closed && tape.start === 'pointed' ? 1 : 0;
  const last = spaces - (!tape.closed && tape.finish === 'pointed' ? 1 : 0);
  return Array.from({ length: Math.max(0, last - first) }, (_, k) => first + k + 0.5);
}

const tooClose = (at: number, given: number): DraftTrouble => ({
  kind: 'recipe-figure',
  figure: `tapes.${at}.spacing`,
  given,
  unit: 'mm',
  least: LEAST_SPACING,
  nearest: LEAST_SPACING,
  why: 'pins-too-close',
});

function tooMany(at: number, given: number, total: number): DraftTrouble {
  const least = Math.ceil((1000 * total) / MOST_ON_EDGE) / 1000;
  return { ...tooClose(at, given), least, nearest: least, why: 'too-many-pins' };
}
