import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import { type Camera, cameraOn, panBy, type ScreenPoint, toPattern, toScreen, zoomAt } from './camera.ts';
import type { SheetDress, SheetHandle } from './handle.ts';
import type { SheetTool, SheetTouch } from './tool.ts';

const TOUCH_REACH = 22;

/** The sheet on the screen: a canvas that shows a pattern, pans, zooms, and hands touches to the stage's tool. */
export class SheetView implements SheetHandle {
  readonly #canvas: HTMLCanvasElement;
  #pattern: Pattern;
  #camera: Camera | null = null;
  #tool: SheetTool | null = null;
  #dress: SheetDress = {};
  #wanted = 0;
  #drag: { from: SheetTouch; by: 'tool' | 'pan'; last: ScreenPoint; moved: boolean } | null = null;

  constructor(canvas: HTMLCanvasElement, pattern: Pattern) {
    this.#canvas = canvas;
    this.#pattern = pattern;
    canvas.addEventListener('pointerdown', this.#down);
    canvas.addEventListener('pointermove', this.#move);
    canvas.addEventListener('pointerup', this.#up);
    canvas.addEventListener('pointercancel', this.#cancel);
    canvas.addEventListener('wheel', this.#wheel, { passive: false });
    canvas.addEventListener('keydown', this.#key);
    new ResizeObserver(() => this.redraw()).observe(canvas);
  }

  setPattern(pattern: Pattern): void {
    this.#pattern = pattern;
    this.redraw();
  }

  setTool(tool: SheetTool | null): void {
    this.#tool = tool;
    this.redraw();
  }

  setDress(dress: SheetDress): void {
    this.#dress = dress;
    this.redraw();
  }

  redraw(): void {
    this.#wanted ||= requestAnimationFrame(() => {
      this.#wanted = 0;
      this.#draw();
    });
  }

  zoomTo(box: Box): void {
    this.#camera = cameraOn(box, this.#view());
    this.redraw();
  }

  showWhole(): void {
    this.zoomTo(boxOfPattern(this.#pattern));
  }

  zoomBy(factor: number): void {
    const { width, height } = this.#view();
    this.#camera = zoomAt(this.#cameraNow(), this.#view(), { left: width / 2, top: height / 2 }, factor);
    this.redraw();
  }

  cursor(): Point {
    return this.#cameraNow().centre;
  }

  #view = () => ({ width: this.#canvas.clientWidth, height: this.#canvas.clientHeight });

  #cameraNow(): Camera {
    this.#camera ??= cameraOn(boxOfPattern(this.#pattern), this.#view());
    return this.#camera;
  }

  #draw(): void {
    const view = this.#view();
    const ratio = devicePixelRatio;
    const [width, height] = [Math.round(view.width * ratio), Math.round(view.height * ratio)];
    if (width === 0 || height === 0) return;
    if (this.#canvas.width !== width) this.#canvas.width = width;
    if (this.#canvas.height !== height) this.#canvas.height = height;
    const context = this.#canvas.getContext('2d');
    if (!context) return;
    const camera = this.#cameraNow();
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, view.width, view.height);
    context.fillStyle = '#000000';
    context.beginPath();
    for (const { x, y, diameter = 0.6 } of (this.#dress.instead ?? this.#pattern).pins) {
      const { left, top } = toScreen(camera, view, { x, y });
      const radius = Math.max(1, (diameter / 2) * camera.scale);
      context.moveTo(left + radius, top);
      context.arc(left, top, radius, 0, 2 * Math.PI);
    }
    context.fill();
    this.#tool?.draw?.({ context, camera, view, place: (point) => toScreen(camera, view, point) });
  }

  #touch(event: PointerEvent): SheetTouch {
    const box = this.#canvas.getBoundingClientRect();
    const screen = { left: event.clientX - box.left, top: event.clientY - box.top };
    const camera = this.#cameraNow();
    const by = event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse';
    return { at: toPattern(camera, this.#view(), screen), screen, reach: TOUCH_REACH / camera.scale, by };
  }

  #down = (event: PointerEvent): void => {
    const from = this.#touch(event);
    this.#canvas.setPointerCapture(event.pointerId);
    this.#drag = { from, by: this.#tool?.grabs?.(from) ? 'tool' : 'pan', last: from.screen, moved: false };
  };

  #move = (event: PointerEvent): void => {
    const drag = this.#drag;
    if (!drag) return;
    const to = this.#touch(event);
    const away = Math.hypot(to.screen.left - drag.from.screen.left, to.screen.top - drag.from.screen.top);
    if (away > 4) drag.moved = true;
    if (!drag.moved) return;
    if (drag.by === 'tool') this.#tool?.drag?.(drag.from, to);
    else {
      this.#camera = panBy(this.#cameraNow(), to.screen.left - drag.last.left, to.screen.top - drag.last.top);
    }
    drag.last = to.screen;
    this.redraw();
  };

  #up = (event: PointerEvent): void => {
    const drag = this.#drag;
    this.#drag = null;
    if (!drag) return;
    const to = this.#touch(event);
    if (!drag.moved) this.#tool?.tap?.(to);
    else if (drag.by === 'tool') this.#tool?.drop?.(drag.from, to, true);
  };

  #cancel = (event: PointerEvent): void => {
    const drag = this.#drag;
    this.#drag = null;
    if (drag?.by === 'tool' && drag.moved) this.#tool?.drop?.(drag.from, this.#touch(event), false);
  };

  #wheel = (event: WheelEvent): void => {
    event.preventDefault();
    const box = this.#canvas.getBoundingClientRect();
    const at = { left: event.clientX - box.left, top: event.clientY - box.top };
    this.#camera = zoomAt(this.#cameraNow(), this.#view(), at, Math.exp(-event.deltaY / 300));
    this.redraw();
  };

  #key = (event: KeyboardEvent): void => {
    if (this.#tool?.key?.(event)) event.preventDefault();
  };
}
