import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { boxOf, heightOf, widthOf } from '#base/geometry/box.ts';
import { add, type Point, scale, subtract, unit } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { PrickingPass } from '#pattern/order.ts';
import type { Colour, InkMark } from '../drawing/mark.ts';
import { segment } from '../drawing/path.ts';
import { LabelPlacer } from '../ink/labels.ts';
import { textLine } from '../type/lettering.ts';
import { accent, guideLetters, LEAST_LINE } from '../type/style.ts';
import type { Typeface } from '../type/typeface.ts';
import type { Block } from './flow.ts';
import type { GuideStep } from './guide-steps.ts';

/** Each kind of pass has a shape and a colour of its own; the colours are told apart by all kinds of colour vision. */
export function passSign(kind: PrickingPass['kind'], at: Point, size: number): InkMark[] {
  const colour = passColours[kind];
  const width = Math.max(LEAST_LINE, size / 5);
  switch (kind) {
    case 'outside-edge':
      return [{ kind: 'disc', role: 'note', at, diameter: size, colour }];
    case 'curve':
      return [{ kind: 'ring', role: 'note', at, diameter: size, width, colour }];
    case 'motif':
      return [{ kind: 'cross', role: 'note', at, size: size * 1.1, width, turn: 0, colour }];
    case 'filling':
      return [{ kind: 'cross', role: 'note', at, size: size * 1.1, width, turn: Math.PI / 4, colour }];
    case 'ground':
      return [{ kind: 'disc', role: 'note', at, diameter: size * 0.55, colour }];
  }
}

/** Okabe and Ito's vermilion, blue, reddish purple and bluish green ("Color Universal Design", 2008), and black. */
const passColours: Readonly<Record<PrickingPass['kind'], Colour>> = {
  'outside-edge': '#d55e00',
  curve: '#0072b2',
  motif: '#a3487d',
  filling: '#00795a',
  ground: '#000000',
};

/** All pins by the step in which they are pricked, and the ruler's lines with their numbers. */
export function guideMap(
  typeface: Typeface,
  pins: readonly Point[],
  steps: readonly GuideStep[],
  width: number,
  most: number,
): Block {
  const box = boxOf(pins);
  const factor = Math.min(
    LARGEST,
    (width - 2 * BORDER) / Math.max(1, widthOf(box)),
    (most - 2 * BORDER) / Math.max(1, heightOf(box)),
  );
  const height = heightOf(box) * factor + 2 * BORDER;
  return {
    height,
    draw: (at) => {
      const toMap: Affine = {
        a: factor,
        b: 0,
        c: 0,
        d: factor,
        e: at.x + (width - widthOf(box) * factor) / 2 - box.left * factor,
        f: at.y + BORDER - box.top * factor,
      };
      const places = pins.map((pin) => applyAffine(toMap, pin));
      const index = new PointIndex(places);
      const size = signSize(places, index);
      const placer = new LabelPlacer(index, size / 2);
      return [
        ...steps.flatMap((step) => rulerLines(typeface, step, places, placer)),
        ...steps.flatMap(({ kind, passes }) =>
          passes.flatMap(({ order }) => order.flatMap((pin) => passSign(kind, places[pin]!, size))),
        ),
      ];
    },
  };
}

const BORDER = 7;
const LARGEST = 2;

/** Signs as large as their neighbours leave room for: six tenths of the median distance. */
function signSize(places: readonly Point[], index: PointIndex): number {
  const distances = places.map((_, k) => index.nearestTo(k, 4)).sort((one, other) => one - other);
  const median = distances[distances.length >> 1] ?? 2;
  return Math.min(1.5, Math.max(0.35, median * 0.6));
}

/** Lines so near each other that numbers would not fit beside all of them are numbered every second, fifth, tenth. */
function rulerLines(
  typeface: Typeface,
  step: GuideStep,
  places: readonly Point[],
  placer: LabelPlacer,
): InkMark[] {
  const lines = step.passes.filter(({ ruler }) => ruler !== null).map(({ order }) => ends(order, places));
  const spacing = lineSpacing(lines);
  const every = [1, 2, 5, 10, 20, 50].find((k) => k * spacing >= ROOM_FOR_NUMBER) ?? 100;
  return lines.flatMap(({ from, to }, k) => {
    if (k > 0 && (k + 1) % every !== 0 && k < lines.length - 1) return [];
    const out = unit(subtract(to, from));
    const [first, last] = [subtract(from, scale(out, OVERHANG)), add(to, scale(out, OVERHANG))];
    const number = textLine(typeface, `${k + 1}`, guideLetters, { at: first, align: 'middle' });
    const beside = (end: Point, way: number): Point[] =>
      [1.8, 2.6, 3.4, 4.2].map((far) => {
        const place = add(end, scale(out, way * far));
        return { x: place.x, y: place.y + 1.1 };
      });
    // A step of one line needs no number to find it by.
    const placed =
      lines.length > 1 && placer.placeAtOneOf(number, [...beside(first, -1), ...beside(last, 1)]);
    return [
      { kind: 'stroke', role: 'note', path: segment(first, last), width: LEAST_LINE, colour: accent },
      ...(placed ? [placed] : []),
    ];
  });
}

const OVERHANG = 1.2;
const ROOM_FOR_NUMBER = 3.8;

interface Ends {
  readonly from: Point;
  readonly to: Point;
}

/** The two pins of a line that lie furthest along it; a lone pin has no direction and lies as the sheet does. */
function ends(order: readonly number[], places: readonly Point[]): Ends {
  const from = places[order[0]!]!;
  const to = places[order.at(-1)!]!;
  return order.length > 1
    ? { from, to }
    : { from: { x: from.x - 1, y: from.y }, to: { x: from.x + 1, y: from.y } };
}

/** Median distance from one line to the next, measured square to the line. */
function lineSpacing(lines: readonly Ends[]): number {
  const gaps = lines.slice(1).map(({ from }, k) => {
    const before = lines[k]!;
    const along = unit(subtract(before.to, before.from));
    const step = subtract(from, before.from);
    return Math.abs(along.x * step.y - along.y * step.x);
  });
  gaps.sort((one, other) => one - other);
  return gaps[gaps.length >> 1] ?? ROOM_FOR_NUMBER;
}
