import { type Box, boxHolds, heightOf, widthOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { films } from '#paper/ink/tints.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { BaseLayer } from './base-layer.ts';
import { type Camera, cameraOn, panBy, type ScreenPoint, toPattern, toScreen, zoomAt } from './camera.ts';
import { addCross } from './cross.ts';
import { type GestureListener, Gestures, type PointerKind } from './gestures.ts';
import type { SheetDress, SheetHandle } from './handle.ts';
import { drawLoupe } from './loupe.ts';
import type { Painting } from './paint.ts';
import type { PaperUnder } from './paper-under.ts';
import { differenceBox, type Scene, sceneOf } from './scene.ts';
import type { SheetTool, SheetTouch } from './tool.ts';
import { wholeSheet } from './whole-sheet.ts';

/** Things within this many CSS pixels of a touch are touched: a target of 44 px. */
const TOUCH_REACH = 22;
const CURSOR_STEP = 20;
/** A change of less than this share of the view is painted at once; a larger one a piece at a time. */
const SMALL_SHARE = 0.15;
/** So is one with more pins in it than this, however little of the view they take. */
const FEW_PINS = 1000;

export interface SheetEvents {
  undo(): void;
  redo(): void;
}

/** The sheet on the screen: shows a pattern, pans, zooms, and hands touches and keys to the stage's tool. */
export class SheetView implements SheetHandle, GestureListener {
  readonly #canvas: HTMLCanvasElement;
  readonly #events: SheetEvents;
  readonly #base = new BaseLayer();
  readonly #gestures: Gestures;
  readonly #resized: ResizeObserver;
  #pattern: Pattern;
  /** Null until it is first drawn, and a step behind until the next frame where the pattern changed. */
  #scene: Scene | null = null;
  #isSceneBehind = true;
  /** Whether the next frame begins a whole new picture. */
  #isToPaint = true;
  #paper: PaperUnder | null = null;
  #camera: Camera | null = null;
  #tool: SheetTool | null = null;
  #dress: SheetDress = {};
  #frame = 0;
  #cursor: Point | null = null;
  #penOnly = false;
  /** How the sheet was seen when two fingers began to move it. */
  #pinched: Camera | null = null;
  #drag: { readonly from: SheetTouch; readonly by: 'tool' | 'pan'; last: SheetTouch } | null = null;

  constructor(canvas: HTMLCanvasElement, pattern: Pattern, events: SheetEvents) {
    this.#canvas = canvas;
    this.#events = events;
    this.#pattern = pattern;
    this.#gestures = new Gestures(canvas, this);
    canvas.addEventListener('keydown', this.#key);
    canvas.addEventListener('focus', this.redraw);
    canvas.addEventListener('blur', this.redraw);
    this.#resized = new ResizeObserver(this.#repaint);
    this.#resized.observe(canvas);
  }

  stop(): void {
    cancelAnimationFrame(this.#frame);
    this.#gestures.stop();
    this.#resized.disconnect();
  }

  setPattern(pattern: Pattern): void {
    if (pattern === this.#pattern) return;
    // Pixels that became millimetres lie elsewhere: what was seen is seen no more.
    if (pattern.unit !== this.#pattern.unit) this.#camera = null;
    this.#pattern = pattern;
    this.#changeScene();
  }

  setPaper(paper: PaperUnder | null): void {
    this.#paper = paper;
    this.#repaint();
  }

  setTool(tool: SheetTool | null): void {
    this.#gestures.breakOff();
    this.#tool = tool;
    this.redraw();
  }

  setDress(dress: SheetDress): void {
    const before = this.#dress;
    this.#dress = dress;
    if ((before.instead ?? null) !== (dress.instead ?? null)) this.#changeScene();
    if (
      before.paper !== dress.paper ||
      (before.film ?? 'none') !== (dress.film ?? 'none') ||
      before.markings !== dress.markings ||
      (before.photo ?? null) !== (dress.photo ?? null) ||
      (before.pins ?? true) !== (dress.pins ?? true)
    ) {
      this.#repaint();
    }
  }

  readonly redraw = (): void => {
    this.#frame ||= requestAnimationFrame(() => {
      this.#frame = 0;
      this.#draw();
    });
  };

  zoomTo(box: Box): void {
    this.#camera = cameraOn(box, this.#view());
    this.#cursor = null;
    this.redraw();
  }

  showWhole(): void {
    this.zoomTo(wholeSheet(this.#dress.instead ?? this.#pattern));
  }

  zoomBy(factor: number): void {
    const { width, height } = this.#view();
    this.#camera = zoomAt(this.#cameraNow(), this.#view(), { left: width / 2, top: height / 2 }, factor);
    this.redraw();
  }

  cursor(): Point {
    return this.#cursor ?? this.#cameraNow().centre;
  }

  /** Whether fingers only move the sheet, and all else is the pen's. */
  setPenOnly(penOnly: boolean): void {
    this.#gestures.breakOff();
    this.#penOnly = penOnly;
  }

  tap(at: ScreenPoint, by: PointerKind): void {
    if (this.#onlyMoves(by)) return;
    this.#cursor = null;
    this.#tool?.tap?.(this.#touch(at, by));
    this.redraw();
  }

  dragStart(from: ScreenPoint, by: PointerKind): void {
    const touch = this.#touch(from, by);
    const grabbed = !this.#onlyMoves(by) && this.#tool?.grabs?.(touch);
    this.#drag = { from: touch, by: grabbed ? 'tool' : 'pan', last: touch };
  }

  drag(to: ScreenPoint): void {
    const drag = this.#drag;
    if (!drag) return;
    const touch = this.#touch(to, drag.from.by);
    if (drag.by === 'tool') this.#tool?.drag?.(drag.from, touch);
    else {
      const { left, top } = drag.last.screen;
      this.#camera = panBy(this.#cameraNow(), to.left - left, to.top - top);
    }
    drag.last = touch;
    this.redraw();
  }

  dragEnd(to: ScreenPoint, kept: boolean): void {
    const drag = this.#drag;
    this.#drag = null;
    if (drag?.by === 'tool') this.#tool?.drop?.(drag.from, this.#touch(to, drag.from.by), kept);
    this.redraw();
  }

  pinchStart(): void {
    this.#pinched = this.#cameraNow();
  }

  pinch(from: ScreenPoint, to: ScreenPoint, factor: number): void {
    // From where it began, so that fingers which come back bring the view back.
    const moved = panBy(this.#pinched ?? this.#cameraNow(), to.left - from.left, to.top - from.top);
    this.#camera = zoomAt(moved, this.#view(), to, factor);
    this.redraw();
  }

  wheel(at: ScreenPoint, across: number, down: number, zooming: boolean): void {
    this.#camera = zooming
      ? zoomAt(this.#cameraNow(), this.#view(), at, Math.exp(-down / 300))
      : panBy(this.#cameraNow(), -across, -down);
    this.redraw();
  }

  fingersTapped(count: 2 | 3): void {
    // A hand that comes to rest beside the pen taps with several fingers too.
    if (this.#penOnly) return;
    if (count === 2) this.#events.undo();
    else this.#events.redo();
  }

  readonly #onlyMoves = (by: PointerKind): boolean => this.#penOnly && by === 'touch';

  readonly #view = () => ({ width: this.#canvas.clientWidth, height: this.#canvas.clientHeight });

  #cameraNow(): Camera {
    this.#camera ??= cameraOn(wholeSheet(this.#pattern), this.#view());
    return this.#camera;
  }

  /** However much changes before the next frame, all of it is brought up to date once. */
  #changeScene(): void {
    this.#isSceneBehind = true;
    this.redraw();
  }

  readonly #repaint = (): void => {
    this.#isToPaint = true;
    this.redraw();
  };

  /** Brings the scene up to date; true where there was anything to do, and the frame has had its share of work. */
  #catchUp(): boolean {
    const wasBehind = this.#isSceneBehind;
    if (wasBehind) {
      const before = this.#scene;
      const scene = sceneOf(this.#dress.instead ?? this.#pattern, before);
      this.#scene = scene;
      this.#isSceneBehind = false;
      const changed = before && differenceBox(before, scene);
      if (changed && !this.#isToPaint && this.#isSmall(changed, scene)) {
        this.#base.paintPart(this.#painting(scene), changed);
      } else if (changed || !before) this.#isToPaint = true;
    }
    const isSharp = this.#drag || this.#base.serves(this.#cameraNow(), this.#view());
    if (this.#isToPaint || !isSharp) this.#base.paintAll(this.#painting(this.#scene!));
    this.#isToPaint = false;
    return wasBehind;
  }

  #isSmall(changed: Box, { pattern }: Scene): boolean {
    const { width, height } = this.#view();
    const { scale } = this.#cameraNow();
    const area = widthOf(changed) * heightOf(changed) * scale * scale;
    if (area > width * height * SMALL_SHARE) return false;
    let pins = 0;
    return pattern.pins.every((pin) => !boxHolds(changed, pin) || ++pins <= FEW_PINS);
  }

  #painting(scene: Scene): Painting {
    return {
      scene,
      camera: this.#cameraNow(),
      view: this.#view(),
      ratio: devicePixelRatio,
      paper: this.#dress.photo ?? this.#paper,
      paperShare: this.#dress.paper ?? 0,
      film: films[this.#dress.film ?? 'none'],
      markings: this.#dress.markings ?? true,
      pins: this.#dress.pins ?? true,
    };
  }

  #draw(): void {
    const view = this.#view();
    const ratio = devicePixelRatio;
    const [width, height] = [Math.round(view.width * ratio), Math.round(view.height * ratio)];
    if (width === 0 || height === 0) return;
    if (this.#canvas.width !== width || this.#canvas.height !== height) {
      this.#canvas.width = width;
      this.#canvas.height = height;
    }
    const context = this.#canvas.getContext('2d', { alpha: false });
    if (!context) return;
    const camera = this.#cameraNow();
    const more = this.#catchUp() ? this.#base.isAtWork : this.#base.work();
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, view.width, view.height);
    this.#base.show(context, camera, view);
    this.#tool?.draw?.({ context, camera, view, place: (point) => toScreen(camera, view, point) });
    if (this.#cursor && document.activeElement === this.#canvas) this.#drawCursor(context, camera);
    const drag = this.#drag;
    if (drag?.by === 'tool' && drag.from.by === 'touch') {
      drawLoupe(context, drag.last.screen, view, ratio);
    }
    if (more) this.redraw();
  }

  #drawCursor(context: CanvasRenderingContext2D, camera: Camera): void {
    const at = toScreen(camera, this.#view(), this.cursor());
    for (const [width, colour] of [
      [5, '#ffffff'],
      [2, '#1c5d5a'],
    ] as const) {
      context.lineWidth = width;
      context.strokeStyle = colour;
      context.beginPath();
      context.arc(at.left, at.top, 14, 0, 2 * Math.PI);
      addCross(context, at, 6, 22);
      context.stroke();
    }
  }

  #touch(screen: ScreenPoint, by: SheetTouch['by']): SheetTouch {
    const camera = this.#cameraNow();
    return { at: toPattern(camera, this.#view(), screen), screen, reach: TOUCH_REACH / camera.scale, by };
  }

  /** Arrows move the cursor, Enter and the space bar touch what is under it, + - and 0 zoom; the rest is the tool's. */
  readonly #key = (event: KeyboardEvent): void => {
    if (this.#tool?.key?.(event) || this.#ownKey(event)) {
      event.preventDefault();
      this.redraw();
    }
  };

  #ownKey({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyboardEvent): boolean {
    if (ctrlKey || metaKey || altKey) return false;
    const way = WAYS[key];
    if (way) {
      const step = (shiftKey ? 1 : CURSOR_STEP) / this.#cameraNow().scale;
      const { x, y } = this.cursor();
      this.#cursor = { x: x + way[0] * step, y: y + way[1] * step };
      this.#follow(this.#cursor);
      return true;
    }
    switch (key) {
      case 'Enter':
      case ' ': {
        this.#cursor ??= this.cursor();
        this.#tool?.tap?.(this.#touch(toScreen(this.#cameraNow(), this.#view(), this.#cursor), 'keyboard'));
        return true;
      }
      case '+':
      case '=':
        this.zoomBy(1.25);
        return true;
      case '-':
        this.zoomBy(0.8);
        return true;
      case '0':
        this.showWhole();
        return true;
      default:
        return false;
    }
  }

  /** Moves the sheet where the cursor would leave the view. */
  #follow(cursor: Point): void {
    const view = this.#view();
    const { left, top } = toScreen(this.#cameraNow(), view, cursor);
    const across = Math.min(0, view.width - 30 - left) + Math.max(0, 30 - left);
    const down = Math.min(0, view.height - 30 - top) + Math.max(0, 30 - top);
    if (across || down) this.#camera = panBy(this.#cameraNow(), across, down);
  }
}

const WAYS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
