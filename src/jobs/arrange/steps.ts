import type { Point } from '#base/geometry/point.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** One thing done to a whole pattern. Angles are degrees, lengths mm. */
export type ArrangeStep =
  /** In a line through the middle of the pins, at so many degrees to the right, clockwise: 90 is upright. */
  | { readonly kind: 'mirror'; readonly line: number }
  /** Clockwise about the middle of the pins. */
  | { readonly kind: 'turn'; readonly degrees: number }
  | { readonly kind: 'scale'; readonly factor: number }
  /** `from` is null where the pattern's recipe says it. */
  | { readonly kind: 'ground-angle'; readonly from: number | null; readonly to: number }
  /** `step` is null where the pattern's own repeat says it. */
  | { readonly kind: 'repeat'; readonly count: number; readonly step: Point | null }
  | { readonly kind: 'join'; readonly other: Pattern; readonly on: PinOnPin | null };

/** Which pin of the other pattern is laid on which of this one; by id, or by place from 0. */
export interface PinOnPin {
  readonly own: string;
  readonly other: string;
}
