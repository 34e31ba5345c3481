import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compose, rotation, scaling, translation } from '#base/geometry/affine.ts';
import { boxHolds, growBox, isEmptyBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { boxOfMark, boxOfMarks } from '#paper/drawing/box.ts';
import { layerOf, layers } from '#paper/drawing/layer.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { moveMark } from '#paper/drawing/move.ts';
import { type OutlineContext, outline } from '#paper/drawing/outline.ts';
import { polyline, roundedRectangle, smoothCurve } from '#paper/drawing/path.ts';

const colour = '#000000';
const role = 'marking';

/** Writes down what it is told, as a short line that can be read. */
class Recorder implements OutlineContext {
  readonly told: string[] = [];
  move = (x: number, y: number): void => this.#tell('move', x, y);
  line = (x: number, y: number): void => this.#tell('line', x, y);
  curve = (...places: number[]): void => this.#tell('curve', ...places);
  circle = (x: number, y: number, radius: number): void => this.#tell('circle', x, y, radius);
  close = (): void => this.#tell('close');

  #tell(word: string, ...numbers: number[]): void {
    this.told.push([word, ...numbers.map((number) => Math.round(number * 1000) / 1000 + 0)].join(' '));
  }
}

const told = (mark: InkMark): string[] => {
  const recorder = new Recorder();
  outline(mark, recorder);
  return recorder.told;
};

const marks: Readonly<Record<InkMark['kind'], InkMark>> = {
  disc: { kind: 'disc', role, at: { x: 10, y: 20 }, diameter: 0.6, colour },
  ring: { kind: 'ring', role, at: { x: 10, y: 20 }, diameter: 1, width: 0.2, colour },
  cross: { kind: 'cross', role, at: { x: 10, y: 20 }, size: 2, width: 0.2, turn: 0, colour },
  stroke: {
    kind: 'stroke',
    role,
    path: polyline([
      { x: 1, y: 2 },
      { x: 4, y: 6 },
    ]),
    width: 0.4,
    colour,
  },
  fill: {
    kind: 'fill',
    role,
    path: polyline(
      [
        { x: 0, y: 0 },
        { x: 3, y: 0 },
        { x: 0, y: 4 },
      ],
      true,
    ),
    colour,
  },
  text: {
    kind: 'text',
    role,
    at: { x: 10, y: 20 },
    text: 'a',
    size: 1,
    width: 5,
    weight: 'regular',
    align: 'left',
    turn: 0,
    colour,
  },
  image: {
    kind: 'image',
    role: 'picture',
    picture: { form: 'raster', width: 3, height: 2, channels: 1, bytes: new Uint8Array(6) },
    place: scaling(10),
  },
};

describe('where marks run', () => {
  test('each kind, in words', () => {
    expect(told(marks.disc)).toEqual(['circle 10 20 0.3']);
    // A ring's line runs in the middle of its ink, whose outer edge is the diameter.
    expect(told(marks.ring)).toEqual(['circle 10 20 0.4']);
    expect(told(marks.cross)).toEqual(['move 9 20', 'line 11 20', 'move 10 19', 'line 10 21']);
    expect(told(marks.stroke)).toEqual(['move 1 2', 'line 4 6']);
    expect(told(marks.fill)).toEqual(['move 0 0', 'line 3 0', 'line 0 4', 'close']);
    // Pixel centres are whole: the picture's edge lies half a pixel outside them.
    expect(told(marks.image)).toEqual(['move -5 -5', 'line 25 -5', 'line 25 15', 'line -5 15', 'close']);
  });

  test('boxes hold all ink', () => {
    expect(boxOfMark(marks.ring)).toEqual({ left: 9.5, top: 19.5, right: 10.5, bottom: 20.5 });
    expect(boxOfMark(marks.stroke)).toEqual({ left: 0.8, top: 1.8, right: 4.2, bottom: 6.2 });
    expect(isEmptyBox(boxOfMarks([]))).toBe(true);
    expect(isEmptyBox(boxOfMark({ kind: 'stroke', role, path: [], width: 5, colour }))).toBe(true);
    const clipped = { ...marks.fill, clip: { left: 1, top: 1, right: 2, bottom: 9 } };
    expect(boxOfMark(clipped)).toEqual({ left: 1, top: 1, right: 2, bottom: 4 });
  });
});

describe('moving', () => {
  test('takes the outline along and keeps sizes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -400, max: 400, noNaN: true }),
        fc.double({ min: -400, max: 400, noNaN: true }),
        (x, y) => {
          for (const mark of Object.values(marks)) {
            const before = boxOfMark(mark);
            const after = boxOfMark(moveMark(mark, translation(x, y)));
            expect(after.left).toBeCloseTo(before.left + x, 6);
            expect(after.bottom).toBeCloseTo(before.bottom + y, 6);
            expect(after.right - after.left).toBeCloseTo(before.right - before.left, 6);
          }
        },
      ),
    );
  });

  test('there and back again is where it was', () => {
    const map = compose(translation(5, 7), rotation(0.3));
    const back = compose(rotation(-0.3), translation(-5, -7));
    for (const mark of Object.values(marks)) {
      const twice = boxOfMark(moveMark(moveMark(mark, map), back));
      const once = boxOfMark(mark);
      for (const side of ['left', 'top', 'right', 'bottom'] as const)
        expect(twice[side]).toBeCloseTo(once[side], 9);
    }
  });
});

describe('paths', () => {
  const circle = (count: number): Point[] =>
    Array.from({ length: count }, (_, k) => ({
      x: 20 * Math.cos((2 * Math.PI * k) / count),
      y: 20 * Math.sin((2 * Math.PI * k) / count),
    }));

  test('a smooth curve runs through its points, and round a circle stays near it', () => {
    const points = circle(24);
    const path = smoothCurve(points, true);
    const ends = path.flatMap((step) => (step.step === 'curve' ? [step.to] : []));
    expect(ends).toEqual([...points.slice(1), points[0]]);
    for (let k = 0; k + 1 < path.length; k++) {
      const [from, piece] = [path[k]!, path[k + 1]!];
      if (piece.step !== 'curve' || from.step === 'close') continue;
      // The middle of a cubic is (p0 + 3 p1 + 3 p2 + p3) / 8.
      const middle = (axis: 'x' | 'y'): number =>
        (from.to[axis] + 3 * piece.first[axis] + 3 * piece.second[axis] + piece.to[axis]) / 8;
      expect(Math.abs(Math.hypot(middle('x'), middle('y')) - 20)).toBeLessThan(0.01);
    }
  });

  test('fewer than two points draw nothing, two a straight line', () => {
    expect([smoothCurve([]), smoothCurve([{ x: 1, y: 1 }]), polyline([])]).toEqual([[], [], []]);
    expect(
      smoothCurve([
        { x: 0, y: 0 },
        { x: 1, y: 1 },
      ]),
    ).toEqual(
      polyline([
        { x: 0, y: 0 },
        { x: 1, y: 1 },
      ]),
    );
  });

  test('a rounded rectangle stays within its box', () => {
    const box = { left: 3, top: 4, right: 30, bottom: 20 };
    const ink = boxOfMark({ kind: 'fill', role, path: roundedRectangle(box, 2), colour });
    expect(boxHolds(growBox(box, 1e-9), { x: ink.left, y: ink.top })).toBe(true);
    expect(boxHolds(growBox(box, 1e-9), { x: ink.right, y: ink.bottom })).toBe(true);
  });
});

test('every role has a layer', () => {
  for (const one of ['hole', 'marking', 'gimp', 'tint', 'outline', 'note', 'guide', 'picture'] as const) {
    expect(layers).toContain(layerOf(one));
  }
});
