import type { Camera } from '#base/fit/camera.ts';
import type { Point } from '#base/geometry/point.ts';

/** What was found at one pin. `unseen`: outside the picture, or where light from elsewhere hides it. */
export type Verdict = 'good' | 'missing' | 'off-centre' | 'oval' | 'large' | 'unseen';

/** The hole at one pin, in mm on the pattern; measures are null where no hole was seen. */
export interface PinVerdict {
  readonly index: number;
  readonly verdict: Verdict;
  /** From the pin to the hole. */
  readonly dx: number | null;
  readonly dy: number | null;
  /** Longest by shortest diameter, the camera's tilt taken out. */
  readonly aspect: number | null;
  /** Of the longest diameter, degrees clockwise from x, from -90 up to 90. */
  readonly angle: number | null;
  /** How far the needle leant, degrees; null where the hole is round or nobody knows how thick the card is. */
  readonly lean: number | null;
  readonly diameter: number | null;
}

/** A hole that the pattern does not have. */
export interface ExtraHole extends Point {
  readonly diameter: number;
}

/** Something about a judgement that a person should know. */
export type LightNote =
  /** The pattern lies on the holes in `ways` more ways that explain them as well. */
  | { readonly kind: 'ambiguous'; readonly ways: number; readonly turn: number; readonly mirrored: boolean }
  | { readonly kind: 'dark-holes' }
  /** Too blurred to tell oval holes from round ones; the other verdicts hold. */
  | { readonly kind: 'blurred' }
  | { readonly kind: 'unseen'; readonly pins: number }
  | { readonly kind: 'other-holes'; readonly count: number }
  | { readonly kind: 'coarse-picture'; readonly pixels: number };

/** How the picture was read. */
export interface LightFit {
  readonly camera: Camera;
  /** Pins that were paired with a hole. */
  readonly pairs: number;
  /** Root mean square of the steps from pins to their holes, in x and in y, over the holes that are in place, mm. */
  readonly rms: number;
  /** Whether the card is seen from the back. */
  readonly mirrored: boolean;
  /** Pixels a millimetre at the middle of the pattern. */
  readonly pixelsPerMm: number;
  /** Of most holes, mm. */
  readonly holeDiameter: number;
  /** Whether holes are light on a dark card or dark on a light one. */
  readonly holes: 'light' | 'dark';
}

/** A part of the card where the needle leant one way. */
export interface LeaningZone {
  readonly across: 'left' | 'middle' | 'right';
  readonly down: 'top' | 'middle' | 'bottom';
  readonly holes: number;
  /** Longest by shortest diameter of its holes together. */
  readonly aspect: number;
  /** Of the longest diameter, degrees clockwise from x, seen from the front. */
  readonly angle: number;
  /** Which way the holes have strayed along it: the needle's point went there. Null where that is not clear. */
  readonly towards: Point | null;
  readonly lean: number | null;
}

export interface Judgement {
  readonly missing: readonly number[];
  readonly extra: readonly ExtraHole[];
  readonly offCentre: readonly number[];
  readonly oval: readonly number[];
  readonly large: readonly number[];
  readonly unseen: readonly number[];
  /** One for each pin of the pattern, by its index. */
  readonly pins: readonly PinVerdict[];
  readonly zones: readonly LeaningZone[];
  readonly fit: LightFit;
  readonly notes: readonly LightNote[];
}

/** Why a picture could not be judged, with what was tried. */
export type LightTrouble =
  | { readonly kind: 'light-few-pins'; readonly pins: number }
  | { readonly kind: 'light-no-holes'; readonly tried: Tried }
  | { readonly kind: 'light-few-holes'; readonly holes: number; readonly pins: number; readonly tried: Tried }
  | { readonly kind: 'light-blurred'; readonly tried: Tried }
  | {
      readonly kind: 'light-no-match';
      readonly holes: number;
      readonly pins: number;
      readonly explained: number;
      readonly tried: Tried;
    }
  | {
      readonly kind: 'light-poor-match';
      readonly missing: number;
      readonly extra: number;
      readonly pins: number;
      readonly tried: Tried;
    };

/** What was tried before a picture was given up. */
export interface Tried {
  /** Spots that could be holes, light on dark and dark on light. */
  readonly light: number;
  readonly dark: number;
  /** Guesses of how the card lies that were followed over the whole picture. */
  readonly guesses: number;
}
