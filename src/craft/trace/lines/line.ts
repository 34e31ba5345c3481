import type { PixelPoint } from '#base/geometry/point.ts';

/** A hole as the finder gives it: its centre and its diameter, both in pixels. */
export interface RoundHole extends PixelPoint {
  readonly diameter: number;
}

/** A drawn working line that joins two holes, by their index. */
export interface PinLine {
  readonly from: number;
  readonly to: number;
  /** Share of the way between the two dots on which the line is seen, 0 to 1. */
  readonly strength: number;
}
