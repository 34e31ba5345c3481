import type { Affine } from '#base/geometry/affine.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Recipe } from './recipe/recipe.ts';

/**
 * A lace pattern: what it is, not how it is drawn. A plain JSON-able value that is never changed in place;
 * edits are values of their own (see `change.ts`).
 *
 * Lengths are millimetres, x to the right, y down. Only where `unit` is 'px' (a picture whose scale nobody knows
 * yet) are they pixels of the paper's picture, and every sentence about size says so.
 */
export interface Pattern {
  readonly unit: 'mm' | 'px';
  readonly about: About;
  readonly pins: readonly Pin[];
  readonly runs: readonly Run[];
  readonly marks: readonly Mark[];
  readonly areas: readonly Area[];
  readonly repeat?: Repeat;
  readonly sizes: Sizes;
  readonly sheet?: SheetFrame;
  readonly scale: Scale;
  readonly paper?: PaperPicture;
  /** From which figures it was drafted; absent where it was traced or drawn by hand. */
  readonly recipe?: Recipe;
}

/** Who made the pattern, where it comes from, and what may be done with it. Printed on every sheet. */
export interface About {
  readonly name?: string;
  readonly maker?: string;
  readonly source?: string;
  readonly permission?: string;
  /** The kind of lace, in the maker's own word. */
  readonly lace?: string;
  readonly revision?: string;
  readonly notes?: string;
}

export interface Pin {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Measured or wanted diameter of the dot or hole, mm. */
  readonly diameter?: number;
  /** 0 to 1: how sure the finder was that this is a pin. Absent where a person placed it. */
  readonly confidence?: number;
  /** Why the pin is doubtful: one short word-code a reason, worded for people in one place. */
  readonly doubt?: readonly Doubt[];
}

export type Doubt =
  | 'faint'
  | 'small'
  | 'large'
  | 'oval'
  | 'crossing'
  | 'line-end'
  | 'in-thick-line'
  | 'in-text'
  | 'speck'
  | 'touching'
  | 'edge';

export type RunRole = 'footside' | 'headside' | 'outline' | 'trail-edge' | 'centre' | 'other';

/** Pins in their order on one line or curve, by id. */
export interface Run {
  readonly id: string;
  readonly pins: readonly string[];
  readonly shape: 'line' | 'curve';
  readonly closed: boolean;
  readonly role: RunRole;
  /** Whether the pins are meant to stand at even distances along it. */
  readonly even: boolean;
}

/** Where a mark starts, bends or ends: at a pin, so that it moves with it, or at a place of its own. */
export type Anchor = { readonly pin: string } | Point;

interface MarkBase {
  readonly id: string;
}

export type Mark =
  | (MarkBase & { readonly kind: 'line'; readonly from: Anchor; readonly to: Anchor })
  | (MarkBase & {
      readonly kind: 'gimp';
      readonly path: readonly Anchor[];
      readonly closed: boolean;
      readonly width?: number;
    })
  | (MarkBase & { readonly kind: 'plait'; readonly path: readonly Anchor[] })
  | (MarkBase & { readonly kind: 'picot'; readonly at: Anchor; readonly side?: 'left' | 'right' })
  | (MarkBase & {
      readonly kind: 'arrow';
      readonly from: Anchor;
      readonly to: Anchor;
      readonly label?: string;
    })
  | (MarkBase & { readonly kind: 'number'; readonly at: Anchor; readonly value: number })
  | (MarkBase & {
      readonly kind: 'text';
      readonly at: Anchor;
      readonly text: string;
      readonly height: number;
    });

export type Stitch = 'cloth' | 'half' | 'whole' | 'ground' | 'filling' | 'other';

/** A part of the pattern worked in one stitch; its outline is closed from the last corner to the first. */
export interface Area {
  readonly id: string;
  readonly outline: readonly Anchor[];
  readonly stitch?: Stitch;
  /** The maker's own word for the stitch or filling. */
  readonly name?: string;
  /** '#rrggbb', or absent for none. */
  readonly tint?: string;
}

/** The length after which an edging starts again. */
export interface Repeat {
  /** From a pin to the same pin of the next repeat. */
  readonly step: Point;
  readonly count?: number;
}

/** Sizes chosen for the making; all in mm, all optional. */
export interface Sizes {
  readonly pin?: number;
  readonly hole?: number;
  readonly cardThickness?: number;
  readonly footsideSpacing?: number;
}

/** The frame of the sheet on which the pattern was drawn or traced, from its origin, mm. */
export interface SheetFrame {
  readonly width: number;
  readonly height: number;
}

/** How the size of the pattern is known. 'none' with `unit` 'px', or with 'mm' where nothing vouches for the size. */
export type Scale =
  | { readonly from: 'none' }
  | { readonly from: 'file' | 'given'; readonly dpi: number }
  | { readonly from: 'span'; readonly dpi: number; readonly length: number }
  | { readonly from: 'drafted' };

/** The paper's own picture: a file in the pattern's container, and how it lies under the pins. */
export interface PaperPicture {
  /** Name of the entry in the container, for example 'paper.jpg'. */
  readonly entry: string;
  readonly sha256: string;
  /** Size in pixels as a person sees it upright. */
  readonly width: number;
  readonly height: number;
  /** Maps pixels (x = column, y = row) to the pattern's unit, before anything was straightened. */
  readonly toPattern: Affine;
  /** Where each pin stood on the paper before it was straightened, by pin id, in the pattern's unit. */
  readonly stood?: Readonly<Record<string, Point>>;
}
