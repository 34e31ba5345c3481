import type { Point } from '#base/geometry/point.ts';
import { polyline } from '../drawing/path.ts';
import type { CutDrawing, CutLine } from './drawing.ts';

/** One row of a test coupon: five holes drawn alike. */
export interface CouponRow {
  readonly drawn: number;
  readonly places: readonly Point[];
}

/**
 * A test coupon for the same card: five rows of five holes, drawn from two steps finer than `drawn` to two steps larger.
 * The row in which the pin sits as it should tells the kerf and proves the settings. The coupon's cut corner lies at the
 * finest row.
 */
export function testCoupon(drawn: number): { drawing: CutDrawing; rows: CouponRow[] } {
  const middle = Math.max(drawn, 3 * LEAST_DRAWN);
  const step = Math.min(STEP, (middle - LEAST_DRAWN) / 2);
  const pitch = Math.max(PITCH, 3 * (middle + 2 * step));
  const rows = Array.from({ length: COUNT }, (_, row) => ({
    drawn: Math.round((middle + (row - 2) * step) * 1000) / 1000,
    places: Array.from({ length: COUNT }, (_, column) => ({
      x: BORDER + column * pitch,
      y: BORDER + row * pitch,
    })),
  }));
  const size = 2 * BORDER + (COUNT - 1) * pitch;
  const outline: CutLine = {
    kind: 'path',
    path: polyline(
      [
        { x: CORNER, y: 0 },
        { x: size, y: 0 },
        { x: size, y: size },
        { x: 0, y: size },
        { x: 0, y: CORNER },
      ],
      true,
    ),
  };
  // To and fro, so that the tool goes the shortest way.
  const holes = rows.flatMap((row, k) =>
    (k % 2 ? [...row.places].reverse() : row.places).map(
      (at): CutLine => ({
        kind: 'circle',
        at,
        diameter: row.drawn,
      }),
    ),
  );
  return {
    drawing: { width: size, height: size, layers: { HOLES: holes, OUTLINE: [outline] } },
    rows,
  };
}

const COUNT = 5;
const STEP = 0.05;
const PITCH = 4;
const BORDER = 6;
const CORNER = 4;
const LEAST_DRAWN = 0.05;
