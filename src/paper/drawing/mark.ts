import type { Affine } from '#base/geometry/affine.ts';
import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Path } from './path.ts';

/** What a mark on a sheet is there for. Writers sort marks into layers by it and never by how they look. */
export type Role = 'hole' | 'marking' | 'gimp' | 'tint' | 'outline' | 'note' | 'guide' | 'picture';

/** '#rrggbb'. */
export type Colour = `#${string}`;

interface Ink {
  readonly role: Role;
  /** Nothing of the mark shows outside this box. Marks drawn one after the other share the very same box object. */
  readonly clip?: Box;
}

export interface Disc extends Ink {
  readonly kind: 'disc';
  readonly at: Point;
  readonly diameter: number;
  readonly colour: Colour;
}

/** A circle line; `diameter` is that of its outer edge. */
export interface Ring extends Ink {
  readonly kind: 'ring';
  readonly at: Point;
  readonly diameter: number;
  readonly width: number;
  readonly colour: Colour;
}

/** Two strokes through a point, as long as `size`, upright or (`turn` in radians) turned. */
export interface Cross extends Ink {
  readonly kind: 'cross';
  readonly at: Point;
  readonly size: number;
  readonly width: number;
  readonly turn: number;
  readonly colour: Colour;
}

export interface Stroke extends Ink {
  readonly kind: 'stroke';
  readonly path: Path;
  readonly width: number;
  readonly colour: Colour;
  /** Lengths of dashes and gaps in turn, mm; a whole line where absent. */
  readonly dash?: readonly number[];
}

export interface Fill extends Ink {
  readonly kind: 'fill';
  readonly path: Path;
  readonly colour: Colour;
}

export type Weight = 'regular' | 'bold';

/** One line of text. `at` lies on its baseline, at its left end, middle or right end as `align` says. */
export interface Text extends Ink {
  readonly kind: 'text';
  readonly at: Point;
  readonly text: string;
  /** The height of the letter square (em), mm. */
  readonly size: number;
  /** How wide the line runs, mm, as measured with the typeface it will be printed in. */
  readonly width: number;
  readonly weight: Weight;
  readonly align: 'left' | 'middle' | 'right';
  /** Radians, clockwise on the sheet. */
  readonly turn: number;
  readonly colour: Colour;
}

/** A picture laid on the sheet: `place` maps pixels (x = column, y = row, pixel centres whole) to mm. */
export interface Image extends Ink {
  readonly kind: 'image';
  readonly picture: Picture;
  readonly place: Affine;
}

/** Pixels as a person sees them upright: JPEG bytes as they came, or rows of one (grey) or three (RGB) bytes a pixel. */
export type Picture =
  | {
      readonly form: 'jpeg';
      readonly width: number;
      readonly height: number;
      readonly channels: 1 | 3;
      readonly bytes: Uint8Array;
    }
  | {
      readonly form: 'raster';
      readonly width: number;
      readonly height: number;
      readonly channels: 1 | 3;
      readonly bytes: Uint8Array;
    };

/** The few kinds of mark that all sheets are made of; lengths in mm, y down. */
export type InkMark = Disc | Ring | Cross | Stroke | Fill | Text | Image;
