import type { Point } from '#base/geometry/point.ts';

/**
 * What the pins meant: the regular structures found in a pattern. Pins are named by their index in the pattern.
 * Straightening finds structures; looking over reads them; sheets and guides may use them.
 * `rms` is the root mean square distance (mm) of the member pins from where the structure puts them.
 */
export type Structure =
  | Lattice
  | PolarLattice
  | RunStructure
  | RepeatStructure
  | MirrorSymmetry
  | TurnSymmetry;

interface StructureBase {
  readonly id: string;
  readonly rms: number;
}

/** Pins at `origin + i a + j b` for whole numbers i, j. */
export interface Lattice extends StructureBase {
  readonly kind: 'lattice';
  readonly origin: Point;
  readonly a: Point;
  readonly b: Point;
  readonly pins: readonly number[];
  /** For each pin, its [i, j]. */
  readonly nodes: readonly (readonly [number, number])[];
}

/** Pins on rings round a centre: ring k has radius `radii[k]`, and its pins stand at `phases[k] + 2 pi m / sectors`. */
export interface PolarLattice extends StructureBase {
  readonly kind: 'polar';
  readonly centre: Point;
  readonly sectors: number;
  readonly radii: readonly number[];
  /** Radians, clockwise from the x axis. */
  readonly phases: readonly number[];
  readonly pins: readonly number[];
  /** For each pin, its [ring, sector]. */
  readonly nodes: readonly (readonly [number, number])[];
}

/** Pins in order along one straight line, arc or smooth curve. */
export interface RunStructure extends StructureBase {
  readonly kind: 'run';
  readonly shape: 'line' | 'arc' | 'curve';
  readonly closed: boolean;
  /** Whether the pins stand at even distances along it; `spacing` is then that distance, else the mean one. */
  readonly even: boolean;
  readonly spacing: number;
  readonly pins: readonly number[];
}

/** The same pins again after each `step`: `tracks[t][c]` is the pin of track t in copy c, or null where it lacks. */
export interface RepeatStructure extends StructureBase {
  readonly kind: 'repeat';
  readonly step: Point;
  readonly copies: number;
  readonly tracks: readonly (readonly (number | null)[])[];
}

/** Pins that mirror each other in a line through `through` along `direction`; a pin on the line pairs with itself. */
export interface MirrorSymmetry extends StructureBase {
  readonly kind: 'mirror';
  readonly through: Point;
  readonly direction: Point;
  readonly pairs: readonly (readonly [number, number | null])[];
}

/** Pins that a turn by 1/order of a circle round `centre` maps on to each other; each orbit has `order` places. */
export interface TurnSymmetry extends StructureBase {
  readonly kind: 'turn';
  readonly centre: Point;
  readonly order: number;
  readonly orbits: readonly (readonly (number | null)[])[];
}

/** A pin that its neighbours call for and that is not there. */
export interface MissingPin {
  readonly x: number;
  readonly y: number;
  /** 0 to 1. */
  readonly confidence: number;
  readonly structure: string;
  readonly why: 'lattice' | 'polar' | 'run' | 'repeat' | 'symmetry';
}

/** All that was found about what the pins meant. */
export interface Regularity {
  readonly structures: readonly Structure[];
  /** For each pin, the structure that says where it should stand, or null. */
  readonly structureOf: readonly (string | null)[];
  /** For each pin, where that structure puts it; the pin's own place where there is none. */
  readonly places: readonly Point[];
  readonly missing: readonly MissingPin[];
  /** Indices of pins that seem to belong to nothing and to stand in the way of something. */
  readonly stray: readonly number[];
}
