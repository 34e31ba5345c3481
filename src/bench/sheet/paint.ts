import { type Film, noFilm } from '#base/colour/film.ts';
import type { Box } from '#base/geometry/box.ts';
import { drawOnCanvas } from '#paper/canvas/draw.ts';
import { colourUnder, markUnder } from '#paper/ink/under-film.ts';
import { ink, white } from '#paper/type/style.ts';
import type { Pin } from '#pattern/pattern.ts';
import type { Camera, ViewSize } from './camera.ts';
import { boxOfPixels, layFilm, pixelsOf } from './lay-film.ts';
import type { PaperUnder } from './paper-under.ts';
import { meets, type Scene, type SceneItem, USUAL_DOT } from './scene.ts';
import { SHEET_LETTERS } from './screen-letters.ts';

/** All that a picture of the sheet is painted from. */
export interface Painting {
  readonly scene: Scene;
  readonly camera: Camera;
  readonly view: ViewSize;
  readonly ratio: number;
  readonly paper: PaperUnder | null;
  /** How strongly the paper shows, 0 to 1. */
  readonly paperShare: number;
  readonly markings: boolean;
  /** Drawn where nothing is said of them. */
  readonly pins?: boolean;
  /** Lies over all of it; none where nothing is said of it. */
  readonly film?: Film;
}

type Brush = OffscreenCanvasRenderingContext2D | CanvasRenderingContext2D;

const CHUNK = 400;
/** Things outside the box are passed over so many at a time. */
const PASSED = 4000;

/**
 * Paints what lies in a box, a piece at a time, so that the page may see to other things in between: paper, tints,
 * markings, and the pins on top.
 */
export function* paint(brush: Brush, painting: Painting, wanted: Box): Generator<void> {
  const { scene, camera, view, ratio, paper, paperShare, markings, pins = true, film = noFilm } = painting;
  const pixels = camera.scale * ratio;
  const toSheet = () =>
    brush.setTransform(
      pixels,
      0,
      0,
      pixels,
      (view.width / 2 - camera.centre.x * camera.scale) * ratio,
      (view.height / 2 - camera.centre.y * camera.scale) * ratio,
    );
  toSheet();
  // Whole pixels, so that film which is laid over a picture lies over none of them twice.
  const frame = pixelsOf(wanted, brush.getTransform());
  const box = film === noFilm ? wanted : boxOfPixels(frame, brush.getTransform());
  brush.save();
  brush.beginPath();
  brush.rect(box.left, box.top, box.right - box.left, box.bottom - box.top);
  brush.clip();
  const hasPicture = paper && paperShare > 0;
  brush.fillStyle = hasPicture ? white : colourUnder(white, film);
  brush.fillRect(box.left, box.top, box.right - box.left, box.bottom - box.top);
  if (hasPicture) {
    brush.globalAlpha = paperShare;
    paper.draw(brush);
    brush.globalAlpha = 1;
    toSheet();
    yield;
    if (film !== noFilm) yield* layFilm(brush, film, frame);
  }
  if (markings) {
    const options = { leastLine: 0.7 / pixels, fontFamily: SHEET_LETTERS };
    for (const items of [scene.areas, scene.painted]) {
      for (const chunk of chunksIn(items, box)) {
        drawOnCanvas(
          chunk.flatMap((item) => item.ink).map((mark) => markUnder(mark, film)),
          brush,
          options,
        );
        yield;
      }
    }
  }
  for (const chunk of pinsIn(pins ? scene.pattern.pins : [], box)) {
    paintPins(brush, chunk, pixels, colourUnder(ink, film));
    yield;
  }
  brush.restore();
}

/** Dots a few pixels wide are squares: nobody sees the difference, and they are drawn ten times as fast. */
function paintPins(brush: Brush, pins: readonly Pin[], pixels: number, colour: string): void {
  brush.fillStyle = colour;
  brush.beginPath();
  for (const { x, y, diameter = USUAL_DOT } of pins) {
    const radius = Math.max(diameter / 2, 0.9 / pixels);
    if (radius * pixels < 1.5) brush.rect(x - radius, y - radius, 2 * radius, 2 * radius);
    else {
      brush.moveTo(x + radius, y);
      brush.arc(x, y, radius, 0, 2 * Math.PI);
    }
  }
  brush.fill();
}

function* chunksIn(items: readonly SceneItem[], box: Box): Generator<readonly SceneItem[]> {
  let chunk: SceneItem[] = [];
  let seen = 0;
  for (const item of items) {
    if (meets(item.box, box)) chunk.push(item);
    seen += 1;
    if (chunk.length < CHUNK && seen < PASSED) continue;
    yield chunk;
    chunk = [];
    seen = 0;
  }
  if (chunk.length > 0) yield chunk;
}

function* pinsIn(pins: readonly Pin[], box: Box): Generator<readonly Pin[]> {
  let chunk: Pin[] = [];
  for (const pin of pins) {
    const reach = (pin.diameter ?? USUAL_DOT) / 2;
    if (pin.x < box.left - reach || pin.x > box.right + reach) continue;
    if (pin.y < box.top - reach || pin.y > box.bottom + reach) continue;
    chunk.push(pin);
    if (chunk.length < CHUNK) continue;
    yield chunk;
    chunk = [];
  }
  if (chunk.length > 0) yield chunk;
}
