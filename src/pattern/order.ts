import type { Point } from '#base/geometry/point.ts';

/** In which order a hand pricks the holes: passes in their order, pins by index, every pin in exactly one pass. */
export interface PrickingOrder {
  readonly passes: readonly PrickingPass[];
}

export interface PrickingPass {
  readonly kind: 'outside-edge' | 'curve' | 'motif' | 'filling' | 'ground';
  /** How the ruler lies for a pass along it: through both points; null where the eye leads. */
  readonly ruler: { readonly from: Point; readonly to: Point } | null;
  readonly order: readonly number[];
}
