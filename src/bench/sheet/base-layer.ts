import type { Box } from '#base/geometry/box.ts';
import { type Camera, toPattern, toScreen, type ViewSize } from './camera.ts';
import { type Painting, paint } from './paint.ts';

/** Milliseconds of painting in one frame. */
const BUDGET = 6;

/** How much more than the view is painted on each side, so that a pan does not at once run out of sheet. */
const MARGIN = 0.25;

interface Painted {
  readonly canvas: OffscreenCanvas;
  readonly camera: Camera;
  /** Size of what is painted, CSS pixels, margins included. */
  readonly size: ViewSize;
}

/**
 * Paper, tints, markings and pins as a finished picture. While the view moves the picture is moved; a sharp one is
 * painted meanwhile, a few milliseconds a frame, and takes its place when it is whole.
 */
export class BaseLayer {
  #shown: Painted | null = null;
  #spare: OffscreenCanvas | null = null;
  #next: { readonly painted: Painted; readonly work: Generator<void> } | null = null;

  /** Begins a new picture of the whole view. */
  paintAll(painting: Painting): void {
    const { view, ratio, camera } = painting;
    // Whole pixels on either side, so that the picture lies on the screen's own and is neither blurred nor moved.
    const pixels = (length: number) => Math.round(length * ratio) + 2 * Math.round(length * ratio * MARGIN);
    const canvas = this.#canvasOf(pixels(view.width), pixels(view.height));
    const size = { width: canvas.width / ratio, height: canvas.height / ratio };
    const brush = brushOf(canvas);
    if (!brush) return;
    const work = paint(brush, { ...painting, view: size }, boxOf(camera, size));
    this.#next = { painted: { canvas, camera, size }, work };
  }

  /** A canvas that nothing shows: the one painted before last where there is one, since making one takes time. */
  #canvasOf(width: number, height: number): OffscreenCanvas {
    const canvas = this.#next?.painted.canvas ?? this.#spare ?? new OffscreenCanvas(width, height);
    this.#spare = null;
    if (canvas.width !== width) canvas.width = width;
    if (canvas.height !== height) canvas.height = height;
    return canvas;
  }

  /** Paints a part of the shown picture anew at once, where something small was edited. */
  paintPart(painting: Painting, box: Box): void {
    if (this.#next || !this.#shown) {
      this.paintAll(painting);
      return;
    }
    const { canvas, camera, size } = this.#shown;
    const brush = brushOf(canvas);
    if (!brush) return;
    for (const _ of paint(brush, { ...painting, camera, view: size }, box));
  }

  /** Whether a picture is begun and not yet whole. */
  get isAtWork(): boolean {
    return this.#next !== null;
  }

  /** Paints on for this frame's share of time; true while more is to be done. */
  work(): boolean {
    if (!this.#next) return false;
    const until = performance.now() + BUDGET;
    while (performance.now() < until) {
      const { done } = this.#next.work.next();
      flush(this.#next.painted.canvas);
      if (!done) continue;
      this.#spare = this.#shown?.canvas ?? null;
      this.#shown = this.#next.painted;
      this.#next = null;
      return false;
    }
    return true;
  }

  /** Puts the picture on the screen as the camera now sees it. */
  show(context: CanvasRenderingContext2D, camera: Camera, view: ViewSize): void {
    const shown = this.#shown;
    if (!shown) return;
    const corner = toPattern(shown.camera, shown.size, { left: 0, top: 0 });
    const at = toScreen(camera, view, corner);
    const scale = camera.scale / shown.camera.scale;
    context.imageSmoothingEnabled = scale !== 1;
    context.drawImage(shown.canvas, at.left, at.top, shown.size.width * scale, shown.size.height * scale);
  }

  /** Whether the picture is as sharp as the camera wants and reaches as far. */
  serves(camera: Camera, view: ViewSize): boolean {
    const painted = this.#next?.painted ?? this.#shown;
    if (!painted || painted.camera.scale !== camera.scale) return false;
    const wide = (painted.size.width - view.width) / 2 / camera.scale;
    const high = (painted.size.height - view.height) / 2 / camera.scale;
    return (
      Math.abs(painted.camera.centre.x - camera.centre.x) <= wide * 0.9 &&
      Math.abs(painted.camera.centre.y - camera.centre.y) <= high * 0.9
    );
  }
}

/** A brush whose strokes the processor draws, so that how long they take can be measured and rationed. */
const brushOf = (canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D | null =>
  canvas.getContext('2d', { alpha: false, willReadFrequently: true });

/** Browsers put strokes off until someone looks; without this all of them would be drawn in one long frame. */
const flush = (canvas: OffscreenCanvas): unknown => brushOf(canvas)?.getImageData(0, 0, 1, 1);

function boxOf(camera: Camera, size: ViewSize): Box {
  const { x: left, y: top } = toPattern(camera, size, { left: 0, top: 0 });
  const { x: right, y: bottom } = toPattern(camera, size, { left: size.width, top: size.height });
  return { left, top, right, bottom };
}
