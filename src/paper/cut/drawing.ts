import type { Point } from '#base/geometry/point.ts';
import type { Path } from '../drawing/path.ts';

/**
 * What is done along a line, in the order in which a machine does it: what is only for aligning, then the engraving
 * while the card still lies flat, holes, inner cut-outs, and the outline last, since after it the card may move.
 */
export const cutLayers = ['REF', 'ENGRAVE', 'HOLES', 'INNER', 'OUTLINE'] as const;

export type CutLayer = (typeof cutLayers)[number];

/** A line that a tool follows with its middle: it has no width and no colour. A circle of diameter 0 is a point. */
export type CutLine =
  | { readonly kind: 'circle'; readonly at: Point; readonly diameter: number }
  | { readonly kind: 'path'; readonly path: Path };

/** Lines by layer, in the order in which they are followed. Lengths in mm from the top left, y down. */
export interface CutDrawing {
  readonly width: number;
  readonly height: number;
  readonly layers: Readonly<Partial<Record<CutLayer, readonly CutLine[]>>>;
}

/** The lines of one layer. */
export const linesIn = ({ layers }: CutDrawing, layer: CutLayer): readonly CutLine[] => layers[layer] ?? [];
