import type { Point } from '#base/geometry/point.ts';
import { parseLength } from '#base/units/parse-length.ts';
import type { PinOnPin } from '#jobs/arrange/steps.ts';
import { badOption } from './bad-option.ts';

/** `--mirror`, `--mirror level`, `--mirror 45`: the line of the mirror, in degrees to the right, clockwise. */
export function mirrorLine(text: string | null): number {
  if (text === null || text === 'upright') return 90;
  if (text === 'level') return 0;
  return (
    degreesIn(text) ??
    badOption('--mirror', text, 'upright (left and right change sides), level, or the degrees of its line')
  );
}

/** `--turn 90`, clockwise. */
export const turn = (text: string): number =>
  degreesIn(text) ?? badOption('--turn', text, 'degrees clockwise, such as 90 or -45');

/** `--scale 71%`, `--scale 0.707`. */
export function scaleFactor(text: string): number {
  const [, number, percent] = /^(\d{1,6}(?:[.,]\d{1,12})?)\s*(%)?$/.exec(text.trim()) ?? [];
  const factor = Number((number ?? '').replace(',', '.')) / (percent ? 100 : 1);
  return factor >= 0.01 && factor <= 100
    ? factor
    : badOption('--scale', text, 'how large it becomes, from 1% to 10000%, such as 71% or 1.41');
}

/** `--ground-angle 54`, or `--ground-angle 60:54` where the pattern does not say from which. */
export function groundAngle(text: string): { readonly from: number | null; readonly to: number } {
  const angles = text.split(':').map(degreesIn);
  const [first, second] = angles;
  const fits = angles.length <= 2 && angles.every((angle) => angle !== null && angle > 0 && angle < 90);
  if (!fits || first == null)
    badOption('--ground-angle', text, 'degrees to the footside between 0 and 90, such as 54, or 60:54');
  return second == null ? { from: null, to: first! } : { from: first!, to: second };
}

/** `--repeat 4`. */
export const repeatCount = (text: string): number =>
  /^[1-9]\d{0,5}$/.test(text.trim())
    ? Number(text)
    : badOption('--repeat', text, 'how many times, a whole number such as 4');

/** `--step 0;40mm`: across and down. A semicolon parts the two, since a comma may be the decimal mark. */
export function stepOf(text: string): Point {
  const [x, y, ...more] = text.split(';').map((part) => parseLength(part));
  if (!x?.ok || !y?.ok || more.length > 0)
    return badOption('--step', text, 'how far across and how far down, such as "0;40mm"');
  return { x: x.value, y: y.value };
}

/** `--on f12=f0`: this pattern's pin, and the pin of the other that comes to lie on it. */
export function pinOnPin(text: string): PinOnPin {
  const [own, other, ...more] = text.split('=').map((name) => name.trim());
  if (!own || !other || more.length > 0)
    return badOption('--on', text, 'a pin of this pattern and one of the other, such as f12=f0');
  return { own, other };
}

function degreesIn(text: string): number | null {
  const [, number] = /^(-?\d{1,4}(?:[.,]\d{1,12})?)\s*°?$/.exec(text.trim()) ?? [];
  return number === undefined ? null : Number(number.replace(',', '.'));
}
