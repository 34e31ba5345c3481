import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { Colour, InkMark } from '../../drawing/mark.ts';
import { segment } from '../../drawing/path.ts';
import { textLine } from '../../type/lettering.ts';
import { LEAST_LINE, lineStep, smallLetters } from '../../type/style.ts';
import type { Typeface } from '../../type/typeface.ts';

export type FaultKind = 'missing' | 'off-centre' | 'oval' | 'large' | 'extra' | 'unseen';

/** A fault of a pricked card, to be drawn where it is; places in the mm of what it is drawn on. */
export interface Fault {
  readonly kind: FaultKind;
  /** Where the hole ought to be; for an extra hole where it is. */
  readonly at: Point;
  /** Where the hole is, if it is off its place. */
  readonly hole?: Point;
  /** The direction of the longest diameter of an oval hole, radians. */
  readonly angle?: number;
}

/** The shapes differ as well as the colours, and the colours stay apart for eyes that see red and green alike. */
export const faultColours: Readonly<Record<FaultKind, Colour>> = {
  missing: '#c8102e',
  'off-centre': '#0072b2',
  oval: '#a3487d',
  large: '#8a5a00',
  extra: '#000000',
  unseen: '#7a7a7a',
};

/** A fault as a sign about `size` mm wide. */
export function faultSign({ kind, at, hole, angle = 0 }: Fault, size: number): InkMark[] {
  const colour = faultColours[kind];
  const ink = { role: 'note', colour } as const;
  const ring = (diameter: number, width = 0.1 * size): InkMark => ({
    ...ink,
    kind: 'ring',
    at,
    diameter,
    width,
  });
  switch (kind) {
    case 'missing':
      return [ring(size, 0.14 * size), { ...ink, kind: 'disc', at, diameter: 0.25 * size }];
    case 'off-centre': {
      const to = hole ?? at;
      return [
        ring(size),
        { ...ink, kind: 'stroke', path: segment(at, to), width: Math.max(LEAST_LINE, 0.08 * size) },
        {
          ...ink,
          kind: 'cross',
          at: to,
          size: 0.3 * size,
          width: Math.max(LEAST_LINE, 0.08 * size),
          turn: Math.PI / 4,
        },
      ];
    }
    case 'oval': {
      const [x, y] = [0.75 * size * Math.cos(angle), 0.75 * size * Math.sin(angle)];
      const end = (sign: number, from: number): Point => ({
        x: at.x + sign * from * x,
        y: at.y + sign * from * y,
      });
      return [
        ring(0.9 * size),
        { ...ink, kind: 'stroke', path: segment(end(-1, 0.6), end(-1, 1.1)), width: 0.12 * size },
        { ...ink, kind: 'stroke', path: segment(end(1, 0.6), end(1, 1.1)), width: 0.12 * size },
      ];
    }
    case 'large':
      return [ring(size), ring(0.65 * size)];
    case 'extra':
      return [{ ...ink, kind: 'cross', at, size: 1.1 * size, width: 0.12 * size, turn: Math.PI / 4 }];
    case 'unseen':
      return [{ ...ink, kind: 'ring', at, diameter: 0.5 * size, width: LEAST_LINE }];
  }
}

const WORDS: Readonly<Record<FaultKind, string>> = {
  missing: 'no hole: prick it',
  'off-centre': 'off its place (cross: where it is)',
  oval: 'oval, along the strokes',
  large: 'too wide',
  extra: 'one too many',
  unseen: 'not seen in the photo',
};

/** What the signs that occur mean and how many there are, in a strip of a sheet. */
export function faultKey(typeface: Typeface, faults: readonly Fault[], strip: Box): InkMark[] {
  const kinds = (Object.keys(WORDS) as FaultKind[]).filter((kind) =>
    faults.some((fault) => fault.kind === kind),
  );
  const entries = kinds.map((kind) => {
    const count = faults.filter((fault) => fault.kind === kind).length;
    return {
      kind,
      words: textLine(typeface, `${count} ${WORDS[kind]}`, smallLetters, { at: { x: 0, y: 0 } }),
    };
  });
  const step = lineStep(smallLetters) + 0.6;
  let [x, row] = [strip.left, 0];
  const placed = entries.map(({ kind, words }) => {
    const width = SIGN + words.width + 4;
    if (x > strip.left && x + width > strip.right) {
      x = strip.left;
      row++;
    }
    x += width;
    return { kind, words, x: x - width, row };
  });
  return placed.flatMap((entry) => {
    const y = strip.bottom - 0.6 - (row - entry.row) * step;
    const at = { x: entry.x + SIGN / 2, y: y - 1.1 };
    return [
      ...faultSign({ kind: entry.kind, at, hole: { x: at.x + 0.6, y: at.y } }, 2.2),
      { ...entry.words, at: { x: entry.x + SIGN + 0.6, y } },
    ];
  });
}

const SIGN = 4.4;
