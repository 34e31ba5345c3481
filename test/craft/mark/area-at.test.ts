import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faceAt, facesOf } from '#base/geometry/planar/faces.ts';
import { netOf } from '#base/geometry/planar/net.ts';
import { cross, type Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { areaAt, type FoundArea } from '#craft/mark/area-at.ts';
import { boundsOf, type Reach } from '#craft/mark/bounds.ts';
import { anchorPoint } from '#pattern/anchors.ts';
import { readPattern } from '#pattern/file/read.ts';
import type { Mark, Pattern } from '#pattern/pattern.ts';
import { boxOfPattern, patternFromPins, pinsById } from '#pattern/pins.ts';

function found(pattern: Pattern, at: Point, reach: Reach = 'lines'): FoundArea {
  const area = areaAt(boundsOf(pattern, reach), at);
  if (!area.ok) throw new Error(area.trouble.kind);
  return area.value;
}

function cornersOf(pattern: Pattern, { outline }: FoundArea): Point[] {
  const pins = pinsById(pattern);
  return outline.map((anchor) => anchorPoint(pins, anchor));
}

const areaRound = (corners: readonly Point[]): number =>
  Math.abs(
    corners.reduce((sum, corner, at) => sum + cross(corner, corners[(at + 1) % corners.length]!), 0) / 2,
  );

const line = (id: string, from: string, to: string): Mark => ({
  id,
  kind: 'line',
  from: { pin: from },
  to: { pin: to },
});

const example = (name: string): Pattern => {
  const read = readPattern(readFileSync(`examples/${name}`, 'utf8'));
  if (!read.ok) throw new Error(name);
  return read.value;
};

describe('a net of pins and lines, strayed, turned and grown', () => {
  const side = 8;
  const scene = fc.record({
    stray: fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), {
      minLength: 2 * side * side,
      maxLength: 2 * side * side,
    }),
    turn: fc.double({ min: 0, max: 6.3, noNaN: true }),
    scale: fc.constantFrom(0.01, 1, 100),
    cell: fc.tuple(fc.nat(side - 2), fc.nat(side - 2)),
  });

  test('has the four pins of a square round it', () => {
    fc.assert(
      fc.property(scene, ({ stray, turn, scale, cell: [column, row] }) => {
        const [cos, sin] = [Math.cos(turn) * scale, Math.sin(turn) * scale];
        const pattern = patternFromPins(
          Array.from({ length: side * side }, (_, at) => {
            const x = (at % side) + stray[2 * at]!;
            const y = Math.floor(at / side) + stray[2 * at + 1]!;
            return { x: x * cos - y * sin, y: x * sin + y * cos };
          }),
        );
        const name = (c: number, r: number) => `p${r * side + c + 1}`;
        const marks: Mark[] = [];
        for (let r = 0; r < side; r++) {
          for (let c = 0; c < side; c++) {
            if (c + 1 < side) marks.push(line(`h${c}-${r}`, name(c, r), name(c + 1, r)));
            if (r + 1 < side) marks.push(line(`v${c}-${r}`, name(c, r), name(c, r + 1)));
          }
        }
        const round = [
          name(column, row),
          name(column + 1, row),
          name(column + 1, row + 1),
          name(column, row + 1),
        ];
        const places = round.map((pin) => pattern.pins.find(({ id }) => id === pin)!);
        const middle = {
          x: places.reduce((sum, { x }) => sum + x, 0) / 4,
          y: places.reduce((sum, { y }) => sum + y, 0) / 4,
        };
        const area = found({ ...pattern, marks }, middle);
        expect(new Set(area.outline)).toEqual(new Set(round.map((pin) => ({ pin }))));
        expect(area.size / scale ** 2).toBeCloseTo(areaRound(places) / scale ** 2, 6);
        expect(area.crossings).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe.each([
  'rosehip-edging.json',
  'drafted/compass.json',
  'drafted/estuary.json',
  'drafted/ropewalk.json',
])('in %s', (name) => {
  const pattern = example(name);
  const { left, top, right, bottom } = boxOfPattern(pattern);

  test.each(['lines', 'outlines'] as const)(
    'what is looked up nearby is what all of it says: %s',
    (reach) => {
      const bounds = boundsOf(pattern, reach);
      const size = Math.hypot(right - left, bottom - top);
      const net = netOf(bounds.places, bounds.steps, 1e-5 * size);
      const faces = facesOf(net);
      let enclosed = 0;
      for (let k = 0; k < 60; k++) {
        // Places spread evenly and without a pattern (an additive recurrence by two irrational numbers).
        const at = {
          x: left + (right - left) * ((k * 0.7548776662 + 0.31) % 1),
          y: top + (bottom - top) * ((k * 0.569840291 + 0.17) % 1),
        };
        const area = areaAt(bounds, at);
        const face = faceAt(faces, net.places, at);
        expect(area.ok).toBe(face !== null);
        if (!area.ok || !face) continue;
        enclosed++;
        expect(area.value.size).toBeCloseTo(face.area, 6);
        const corners = cornersOf(pattern, area.value);
        expect(isInside(corners, at)).toBe(true);
        expect(areaRound(corners)).toBeCloseTo(area.value.size, 6);
      }
      expect(enclosed).toBeGreaterThan(5);
    },
  );
});

test('a ring of gimp bounds what its curve encloses, and working lines in it count only where they are asked for', () => {
  const pins = Array.from({ length: 12 }, (_, k) => ({
    x: 10 * Math.cos((k * Math.PI) / 6),
    y: 10 * Math.sin((k * Math.PI) / 6),
  }));
  const pattern: Pattern = {
    ...patternFromPins(pins),
    marks: [
      { id: 'g', kind: 'gimp', path: pins.map((_, k) => ({ pin: `p${k + 1}` })), closed: true },
      line('across', 'p1', 'p7'),
    ],
  };
  const whole = found(pattern, { x: 1, y: 3 }, 'outlines');
  expect(whole.size / (Math.PI * 100)).toBeCloseTo(1, 2);
  expect(whole.outline.filter((anchor) => 'pin' in anchor).length).toBe(12);
  expect(found(pattern, { x: 1, y: 3 }, 'lines').size).toBeCloseTo(whole.size / 2, 3);
});

test('where lines cross without a pin the area ends there, and says so', () => {
  const pattern: Pattern = {
    ...patternFromPins([
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 0, y: 10 },
    ]),
    marks: [line('a', 'p1', 'p3'), line('b', 'p2', 'p4'), line('c', 'p1', 'p2')],
  };
  const area = found(pattern, { x: 5, y: 2 });
  expect(area.size).toBeCloseTo(25, 9);
  expect(area.crossings.length).toBe(1);
  expect(area.crossings[0]!.x).toBeCloseTo(5, 9);
  expect(area.crossings[0]!.y).toBeCloseTo(5, 9);
});

test('an area loose inside another is left out of it', () => {
  const square = (reach: number) => [
    { x: -reach, y: -reach },
    { x: reach, y: -reach },
    { x: reach, y: reach },
    { x: -reach, y: reach },
  ];
  const round = (first: number) => [0, 1, 2, 3].map((k) => ({ pin: `p${first + k}` }));
  const pattern: Pattern = {
    ...patternFromPins([...square(10), ...square(3)]),
    areas: [
      { id: 'a1', outline: round(1) },
      { id: 'a2', outline: round(5) },
    ],
  };
  const area = found(pattern, { x: 6, y: 6 });
  expect(area.size).toBeCloseTo(400 - 36, 9);
  expect(area.islands).toBe(1);
  expect(isInside(cornersOf(pattern, area), { x: 1, y: 1 })).toBe(false);
  expect(found(pattern, { x: 1, y: 1 }).size).toBeCloseTo(36, 9);
});

test('nothing drawn, and nothing all round', () => {
  const bare = patternFromPins([
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 5, y: 9 },
  ]);
  const trouble = (pattern: Pattern, at: Point) => {
    const area = areaAt(boundsOf(pattern, 'lines'), at);
    return area.ok ? null : area.trouble.kind;
  };
  expect(trouble(bare, { x: 5, y: 3 })).toBe('nothing-drawn');
  const open = { ...bare, marks: [line('a', 'p1', 'p2'), line('b', 'p2', 'p3')] };
  expect(trouble(open, { x: 5, y: 3 })).toBe('not-enclosed');
  expect(trouble(open, { x: 50, y: 3 })).toBe('not-enclosed');
  expect(trouble({ ...open, marks: [...open.marks, line('c', 'p3', 'p1')] }, { x: 5, y: 3 })).toBe(null);
});
