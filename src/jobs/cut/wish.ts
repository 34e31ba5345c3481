import type { PaperSize } from '#base/units/paper.ts';
import type { CutLayer } from '#paper/cut/drawing.ts';
import type { CutOptions, Extent } from '#paper/cut/options.ts';
import type { CuttingPreset } from '#paper/cut/preset.ts';
import type { Typeface } from '#paper/type/typeface.ts';

/** The kinds of file that machines take. */
export type CutFormat = 'dxf' | 'svg' | 'gcode';

/** How a pattern is cut, as a person puts it; what is absent comes from the preset, the pattern, or a default. mm. */
export interface CutWish {
  readonly typeface: Typeface;
  readonly format: CutFormat;
  readonly preset?: CuttingPreset;
  readonly hole?: number;
  readonly pin?: number;
  readonly kerf?: number;
  readonly cardThickness?: number;
  readonly card?: CutOptions['card'];
  readonly film?: boolean;
  readonly engrave?: boolean;
  readonly ref?: boolean;
  readonly mirror?: boolean;
  readonly only?: readonly CutLayer[];
  /** The next hole at least so far from the last where that can be, so that the heat spreads; null for the shortest way. */
  readonly spread?: number | null;
  readonly bed?: Extent;
  /** In parts where the bed is too small. */
  readonly split?: boolean;
  readonly coupon?: boolean;
  /** A sheet to be printed first, on this paper. */
  readonly printOn?: PaperSize;
  readonly holes?: 'circle' | 'polyline' | 'arcs';
  readonly stroke?: number;
  readonly release?: 'R12' | 'R2000';
  readonly unit?: 'mm' | 'in';
  readonly feed?: number;
  readonly power?: number;
  readonly mostPower?: number;
  /** Straight lines only, in G-code. */
  readonly straight?: boolean;
  /** Milliseconds of standing beam a hole, in G-code. */
  readonly pierce?: number;
}
