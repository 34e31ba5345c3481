import type { GreyPicture } from '#base/picture/grey.ts';

interface Disc {
  readonly column: number;
  readonly row: number;
  readonly diameter: number;
}

const DIRECTIONS = 24;
/** The brightest directions are compared, this far down from the top: light falls on a raised rim from one side. */
const BRIGHT = 20;
/** A raised rim is lighter than the ground beyond it by this share of the hole's depth; ink never is. */
const RAISED = 0.02;
/** More holes than this tell no more. */
const ENOUGH = 300;

/** Printed dots end in their paper; a pricker leaves a raised rim that catches the light. */
export function kindOf(picture: GreyPicture, discs: readonly Disc[]): 'printed' | 'pricked' {
  if (discs.length === 0) return 'printed';
  const every = Math.ceil(discs.length / ENOUGH);
  const raised = discs.filter((_, at) => at % every === 0).map((disc) => rimLight(picture, disc));
  return raised.sort((a, b) => a - b)[raised.length >> 1]! > RAISED ? 'pricked' : 'printed';
}

function rimLight(picture: GreyPicture, disc: Disc): number {
  const radius = disc.diameter / 2;
  const rim: number[] = [];
  const beyond: number[] = [];
  for (let turn = 0; turn < DIRECTIONS; turn++) {
    const angle = (2 * Math.PI * turn) / DIRECTIONS;
    rim.push(meanAlong(picture, disc, angle, 1.25 * radius, 1.55 * radius));
    beyond.push(meanAlong(picture, disc, angle, 1.9 * radius, 2.2 * radius));
  }
  rim.sort((a, b) => a - b);
  beyond.sort((a, b) => a - b);
  const depth = beyond[DIRECTIONS >> 1]! - meanAlong(picture, disc, 0, 0, 0);
  return (rim[BRIGHT]! - beyond[BRIGHT]!) / Math.max(10, depth);
}

function meanAlong(
  { width, height, grey }: GreyPicture,
  disc: Disc,
  angle: number,
  from: number,
  to: number,
) {
  let sum = 0;
  for (const share of [0, 1 / 3, 2 / 3, 1]) {
    const far = from + (to - from) * share;
    const column = Math.max(0, Math.min(width - 1, Math.round(disc.column + far * Math.cos(angle))));
    const row = Math.max(0, Math.min(height - 1, Math.round(disc.row + far * Math.sin(angle))));
    sum += grey[row * width + column]!;
  }
  return sum / 4;
}
