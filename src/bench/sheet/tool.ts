import type { Point } from '#base/geometry/point.ts';
import type { Camera, ScreenPoint, ViewSize } from './camera.ts';

/** A touch of the sheet by finger, pen, mouse or the keyboard's cursor. */
export interface SheetTouch {
  /** In the pattern's unit. */
  readonly at: Point;
  readonly screen: ScreenPoint;
  /** How far from `at` things count as touched, in the pattern's unit: 22 px or more on the screen. */
  readonly reach: number;
  readonly by: 'touch' | 'pen' | 'mouse' | 'keyboard';
}

/** What a stage draws over the sheet, in the pattern's unit under the camera. */
export interface Overlay {
  readonly context: CanvasRenderingContext2D;
  readonly camera: Camera;
  readonly view: ViewSize;
  place(point: Point): ScreenPoint;
}

/**
 * What a stage does with the sheet. Panning and zooming are the sheet's own; a tap or a drag that begins on something
 * the stage wants is the stage's.
 */
export interface SheetTool {
  /** Draws over the sheet; called whenever the view or the tool's own state changes (`SheetHandle.redraw`). */
  draw?(overlay: Overlay): void;
  tap?(touch: SheetTouch): void;
  /** Whether a drag that begins here is the tool's; else it pans. */
  grabs?(touch: SheetTouch): boolean;
  drag?(from: SheetTouch, to: SheetTouch): void;
  /** The drag's end; `kept` is false where it was broken off and nothing may change. */
  drop?(from: SheetTouch, to: SheetTouch, kept: boolean): void;
  /** A key pressed while the sheet has the focus; true where it was the tool's. */
  key?(event: KeyboardEvent): boolean;
}
