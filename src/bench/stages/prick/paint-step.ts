import type { PrickingPass } from '#pattern/order.ts';
import type { Pin } from '#pattern/pattern.ts';
import type { ScreenPoint } from '../../sheet/camera.ts';
import { SHEET_LETTERS } from '../../sheet/screen-letters.ts';
import type { Overlay } from '../../sheet/tool.ts';
import type { End } from './ends.ts';

export interface StepPicture {
  readonly pins: readonly Pin[];
  readonly pass: PrickingPass | null;
  readonly done: ReadonlySet<number>;
  /** Radius of the step's holes, CSS pixels. */
  readonly size: number;
  readonly ends: readonly End[];
}

const HOLE = '#0b4f9e';
const RULER = '#c44f00';
const QUIET = '#6b7280';

/**
 * One step: its holes large and full, those made as rings, the ruler through them; the rest of the sheet faint, with
 * small rings where holes are made. What is to do and what is done differ in shape, since a glance has to do.
 */
export function paintStep(overlay: Overlay, picture: StepPicture): void {
  const { context, view } = overlay;
  const { pass, pins, done, size } = picture;
  context.fillStyle = 'rgb(255 255 255 / 76%)';
  context.fillRect(0, 0, view.width, view.height);
  const here = new Set(pass?.order ?? []);
  const elsewhere = [...done].filter((pin) => !here.has(pin));
  rings(overlay, elsewhere, pins, Math.max(2.5, size * 0.45), QUIET, 1.5);
  if (!pass) return;
  paintWay(overlay, picture);
  const open = pass.order.filter((pin) => !done.has(pin));
  discs(overlay, open, pins, size);
  rings(
    overlay,
    pass.order.filter((pin) => done.has(pin)),
    pins,
    size,
    HOLE,
    Math.max(2, size * 0.3),
  );
  if (open[0] !== undefined) rings(overlay, [open[0]], pins, size * 1.7, RULER, 3, false);
  for (const end of picture.ends) paintLetter(overlay, end, size);
}

/** The ruler, drawn beyond its outermost holes; or, where the eye leads, the way from hole to hole. */
function paintWay(overlay: Overlay, { pass, pins, ends, size }: StepPicture): void {
  const { context } = overlay;
  const places = pass!.order.map((pin) => overlay.place(pins[pin]!));
  const byRuler = pass!.ruler !== null;
  const [a, b] = ends;
  const way = byRuler && a && b ? [beyond(overlay, a, 5 * size), beyond(overlay, b, 5 * size)] : places;
  for (const [width, colour] of [
    [7, '#ffffff'],
    [byRuler ? 3.5 : 2, RULER],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.setLineDash(byRuler ? [] : [7, 6]);
    context.beginPath();
    for (const { left, top } of way) context.lineTo(left, top);
    context.stroke();
  }
  context.setLineDash([]);
}

function discs(
  { context, place }: Overlay,
  which: readonly number[],
  pins: readonly Pin[],
  radius: number,
): void {
  context.fillStyle = HOLE;
  context.strokeStyle = '#ffffff';
  context.lineWidth = 2;
  context.beginPath();
  for (const pin of which) circle(context, place(pins[pin]!), radius);
  context.stroke();
  context.fill();
}

function rings(
  { context, place }: Overlay,
  which: readonly number[],
  pins: readonly Pin[],
  radius: number,
  colour: string,
  width: number,
  emptied = true,
): void {
  context.strokeStyle = colour;
  context.lineWidth = width;
  context.fillStyle = '#ffffff';
  context.beginPath();
  for (const pin of which) circle(context, place(pins[pin]!), radius);
  if (emptied) context.fill();
  context.stroke();
}

function circle(context: CanvasRenderingContext2D, { left, top }: ScreenPoint, radius: number): void {
  context.moveTo(left + radius, top);
  context.arc(left, top, radius, 0, 2 * Math.PI);
}

function paintLetter(overlay: Overlay, end: End, size: number): void {
  const { context } = overlay;
  const radius = Math.max(13, size * 1.6);
  const { left, top } = beyond(overlay, end, size * 2 + radius + 10);
  context.fillStyle = '#ffffff';
  context.strokeStyle = RULER;
  context.lineWidth = 3;
  context.beginPath();
  circle(context, { left, top }, radius);
  context.fill();
  context.stroke();
  context.fillStyle = '#20242c';
  context.font = `600 ${Math.round(radius * 1.3)}px ${SHEET_LETTERS}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(end.letter, left, top + 1);
}

/** So many pixels beyond an end, held within the view so that its letter is always seen. */
function beyond({ place, view }: Overlay, { at, out }: End, pixels: number): ScreenPoint {
  const from = place(at);
  const held = (value: number, most: number, own: number) =>
    own < 0 || own > most ? value : Math.min(most - 18, Math.max(18, value));
  return {
    left: held(from.left + out.x * pixels, view.width, from.left),
    top: held(from.top + out.y * pixels, view.height, from.top),
  };
}
