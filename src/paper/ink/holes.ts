import { PointIndex } from '#base/geometry/point-index.ts';
import type { Pin } from '#pattern/pattern.ts';
import type { Colour, InkMark } from '../drawing/mark.ts';
import type { PaperNote } from '../note.ts';
import { LEAST_LINE } from '../type/style.ts';

/** How a hole is marked for the needle. */
export interface HoleStyle {
  readonly mark: 'dot' | 'ring' | 'cross';
  /** Over all, mm, as it shall look on the paper. */
  readonly diameter: number;
}

export const plainDots: HoleStyle = { mark: 'dot', diameter: 0.6 };

/** White that stays between the marks of neighbouring holes, mm. */
export const LEAST_GAP = 0.2;

/** Smaller marks than this are not seen; holes that would need one lie too near each other to be pricked apart. */
export const LEAST_HOLE_MARK = 0.25;

/**
 * The diameter each hole's mark shall have on the paper, made smaller where neighbours would leave less white
 * between them than `LEAST_GAP`, with a note that names those pins.
 */
export function holeDiameters(
  pins: readonly Pin[],
  wanted: number,
): { diameters: number[]; notes: PaperNote[] } {
  const index = new PointIndex(pins);
  const roomy = wanted + LEAST_GAP;
  const near: string[] = [];
  let closest = Number.POSITIVE_INFINITY;
  const diameters = pins.map((pin, k) => {
    const nearest = index.nearestTo(k, roomy);
    if (nearest >= roomy) return wanted;
    near.push(pin.id);
    closest = Math.min(closest, nearest);
    return Math.max(LEAST_HOLE_MARK, nearest - LEAST_GAP);
  });
  return { diameters, notes: near.length ? [{ kind: 'holes-nearly-touch', pins: near, closest }] : [] };
}

/**
 * Marks for holes at the pins. Ink that spreads by `spread` mm makes a mark that much wider on the paper, so that
 * much less is printed.
 */
export function holeMarks(
  pins: readonly Pin[],
  diameters: readonly number[],
  mark: HoleStyle['mark'],
  spread: number,
  colour: Colour,
): InkMark[] {
  return pins.map(({ x, y }, k) => {
    const diameter = Math.max(LEAST_PRINTED, diameters[k]! - spread);
    const at = { x, y };
    if (mark === 'cross') {
      return {
        kind: 'cross',
        role: 'hole',
        at,
        size: diameter,
        width: LEAST_LINE,
        turn: Math.PI / 4,
        colour,
      };
    }
    // A ring too small to have a middle is a dot.
    if (mark === 'dot' || diameter < 3 * LEAST_LINE)
      return { kind: 'disc', role: 'hole', at, diameter, colour };
    return { kind: 'ring', role: 'hole', at, diameter, width: LEAST_LINE, colour };
  });
}

const LEAST_PRINTED = 0.15;
