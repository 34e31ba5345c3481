import { type Box, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Colour, InkMark } from '../drawing/mark.ts';

/** Border that targets and the frame take up round everything else, mm. */
export const TARGET_ROOM = 10;
const TARGET_SIZE = 6;
const TARGET_COLOUR: Colour = '#000000';

/** Middles of the four targets in the corners of a frame, clockwise from the top left. */
export function targetPlaces(frame: Box): Point[] {
  const { left, top, right, bottom } = growBox(frame, -TARGET_ROOM / 2);
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

/** A target: a cross in a ring. Printed on paper and written for the machine, it is the very same mark. */
export const targetMarks = (at: Point): InkMark[] => [
  { kind: 'cross', role: 'guide', at, size: TARGET_SIZE, width: 0.15, turn: 0, colour: TARGET_COLOUR },
  { kind: 'ring', role: 'guide', at, diameter: TARGET_SIZE / 2, width: 0.15, colour: TARGET_COLOUR },
];
