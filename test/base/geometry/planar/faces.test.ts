import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Face, faceAt, facesOf } from '#base/geometry/planar/faces.ts';
import { type Net, netOf, type Step } from '#base/geometry/planar/net.ts';
import { outlineOf } from '#base/geometry/planar/outline.ts';
import { cross, type Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { distanceToStep } from '#base/geometry/segment.ts';

const WELD = 1e-5;

const areaRound = (corners: readonly Point[]): number =>
  corners.reduce((sum, corner, at) => sum + cross(corner, corners[(at + 1) % corners.length]!), 0) / 2;

const pointsOf = (corners: readonly number[], places: readonly Point[]) =>
  corners.map((corner) => places[corner]!);

/** How many connected parts the places on steps fall into, told by spreading out from one after the other. */
function partCount({ steps }: Net): number {
  const near = new Map<number, number[]>();
  for (const [from, to] of steps) {
    near.set(from, [...(near.get(from) ?? []), to]);
    near.set(to, [...(near.get(to) ?? []), from]);
  }
  const seen = new Set<number>();
  let parts = 0;
  for (const start of near.keys()) {
    if (seen.has(start)) continue;
    parts++;
    const open = [start];
    while (open.length > 0) {
      const place = open.pop()!;
      if (seen.has(place)) continue;
      seen.add(place);
      open.push(...near.get(place)!);
    }
  }
  return parts;
}

/** V - E + F = 1 + C, where F counts the face that reaches to infinity too. */
function expectEuler(net: Net, faces: readonly Face[]): void {
  const onSteps = new Set(net.steps.flat()).size;
  expect(onSteps - net.steps.length + faces.length + 1).toBe(1 + partCount(net));
}

/** Whole ones often, so that lines lie on each other and meet three at a time, as the lines of a lattice do. */
const coordinate = fc.oneof(fc.double({ min: 0, max: 100, noNaN: true }), fc.integer({ min: 0, max: 8 }));
const place = fc.record({ x: coordinate, y: coordinate });
const scribble = fc
  .array(place, { minLength: 2, maxLength: 24 })
  .chain((places) =>
    fc
      .array(fc.tuple(fc.nat(places.length - 1), fc.nat(places.length - 1)), { maxLength: 40 })
      .map((steps) => ({ places, steps: steps as Step[] })),
  );

describe('lines drawn at random', () => {
  test('meet nowhere but at places once they are cut', () => {
    fc.assert(
      fc.property(scribble, ({ places, steps }) => {
        const net = netOf(places, steps, WELD);
        expect(net.places.slice(0, places.length)).toEqual(places);
        for (const [one, [a, b]] of net.steps.entries()) {
          for (const [c, d] of net.steps.slice(one + 1)) {
            if (a === c || a === d || b === c || b === d) continue;
            expect(properlyCross(pointsOf([a, b, c, d], net.places))).toBe(false);
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  test("enclose as many faces as Euler's formula wants, each told once", () => {
    fc.assert(
      fc.property(scribble, ({ places, steps }) => {
        const net = netOf(places, steps, WELD);
        const faces = facesOf(net);
        expectEuler(net, faces);
        const told = faces.map(({ outer }) => outer.toSorted((a, b) => a - b).join(' '));
        expect(new Set(told).size).toBe(told.length);
      }),
      { numRuns: 300 },
    );
  });

  test('enclose a place in just one face, which no line leaves between the place and its outline', () => {
    fc.assert(
      fc.property(scribble, place, ({ places, steps }, at) => {
        const net = netOf(places, steps, WELD);
        fc.pre(net.steps.every(([a, b]) => distanceToStep(at, net.places[a]!, net.places[b]!) > 0.01));
        const faces = facesOf(net);
        const around = faces.filter(
          ({ outer, holes }) =>
            isInside(pointsOf(outer, net.places), at) &&
            !holes.some((hole) => isInside(pointsOf(hole, net.places), at)),
        );
        expect(around.length).toBeLessThanOrEqual(1);
        expect(faceAt(faces, net.places, at)).toBe(around[0] ?? null);
        if (!around[0]) return;
        // No way out: straight lines from the place in all directions first meet the face's own edge.
        const edges = new Set([around[0].outer, ...around[0].holes].flatMap(edgesOf));
        for (let turn = 0; turn < 12; turn++) {
          const first = firstMet(at, (turn * Math.PI) / 6 + 0.1234, net);
          expect(edges.has(first ?? '')).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('have outlines that enclose what the faces do', () => {
    fc.assert(
      fc.property(scribble, ({ places, steps }) => {
        const net = netOf(places, steps, WELD);
        for (const face of facesOf(net)) {
          const outline = pointsOf(outlineOf(face, net.places), net.places);
          expect(areaRound(outline)).toBeCloseTo(face.area, 6);
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('squares of which some edges are gone', () => {
  const size = 6;
  const edges = 2 * size * (size + 1);
  const scene = fc.record({
    gone: fc.array(fc.boolean(), { minLength: edges, maxLength: edges }),
    jitter: fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), {
      minLength: 2 * (size + 1) ** 2,
      maxLength: 2 * (size + 1) ** 2,
    }),
    turn: fc.double({ min: 0, max: 6.3, noNaN: true }),
    scale: fc.constantFrom(1e-3, 1, 1e3),
    away: fc.constantFrom(0, 1e4),
  });

  test('are faces of joined squares, as large as those together, wherever and however they lie', () => {
    fc.assert(
      fc.property(scene, ({ gone, jitter, turn, scale, away }) => {
        const corner = (column: number, row: number) => row * (size + 1) + column;
        const [cos, sin] = [Math.cos(turn) * scale, Math.sin(turn) * scale];
        const places = Array.from({ length: (size + 1) ** 2 }, (_, at) => {
          const x = (at % (size + 1)) + jitter[2 * at]!;
          const y = Math.floor(at / (size + 1)) + jitter[2 * at + 1]!;
          return { x: x * cos - y * sin + away * scale, y: x * sin + y * cos };
        });
        // Squares are joined where the edge between them is gone; -1 is the outside.
        const joined = new Map<number, number>();
        const head = (cell: number): number => {
          const next = joined.get(cell) ?? cell;
          return next === cell ? cell : head(next);
        };
        const cell = (column: number, row: number) =>
          column < 0 || row < 0 || column >= size || row >= size ? -1 : row * size + column;
        const steps: Step[] = [];
        let edge = 0;
        for (let row = 0; row <= size; row++) {
          for (let column = 0; column <= size; column++) {
            for (const [right, down, one, other] of [
              [1, 0, cell(column, row - 1), cell(column, row)],
              [0, 1, cell(column - 1, row), cell(column, row)],
            ] as const) {
              if (column + right > size || row + down > size) continue;
              if (gone[edge++]) joined.set(head(one), head(other));
              else steps.push([corner(column, row), corner(column + right, row + down)]);
            }
          }
        }
        const areas = new Map<number, number>();
        for (let row = 0; row < size; row++) {
          for (let column = 0; column < size; column++) {
            const of = head(cell(column, row));
            const square = areaRound(
              pointsOf(
                [
                  corner(column, row),
                  corner(column + 1, row),
                  corner(column + 1, row + 1),
                  corner(column, row + 1),
                ],
                places,
              ),
            );
            areas.set(of, (areas.get(of) ?? 0) + square);
          }
        }
        areas.delete(head(-1));
        const net = netOf(places, steps, WELD * scale);
        const faces = facesOf(net);
        expectEuler(net, faces);
        const found = faces.map(({ area }) => area / scale ** 2).sort((a, b) => a - b);
        const expected = [...areas.values()].map((area) => area / scale ** 2).sort((a, b) => a - b);
        expect(found.length).toBe(expected.length);
        for (const [at, area] of found.entries()) expect(area).toBeCloseTo(expected[at]!, 4);
      }),
      { numRuns: 300 },
    );
  });
});

test('lines on each other, ends on lines, and places that are nearly one', () => {
  const places = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 4, y: 1e-7 },
    { x: 7, y: 0 },
    { x: 4, y: 5 },
    { x: 4, y: 5 + 1e-7 },
    { x: 0, y: 5 },
  ];
  const net = netOf(
    places,
    [
      [0, 1],
      [2, 3],
      [2, 4],
      [5, 6],
      [6, 0],
    ] as Step[],
    WELD,
  );
  expect(net.steps.map((step) => step.toSorted((a, b) => a - b)).sort()).toEqual([
    [0, 2],
    [0, 6],
    [1, 3],
    [2, 3],
    [2, 4],
    [4, 6],
  ]);
  const [face, ...others] = facesOf(net);
  expect(others).toEqual([]);
  expect(face!.area).toBeCloseTo(20, 5);
});

test('a square in a square, with a line that leads nowhere and one that joins them', () => {
  const square = (reach: number) => [
    { x: -reach, y: -reach },
    { x: reach, y: -reach },
    { x: reach, y: reach },
    { x: -reach, y: reach },
  ];
  const places = [...square(10), ...square(2), { x: 0, y: -5 }];
  const ring = (first: number): Step[] =>
    [0, 1, 2, 3].map((at) => [first + at, first + ((at + 1) % 4)] as const);
  const spur: Step = [1, 8];
  const between = (steps: readonly Step[]) => {
    const net = netOf(places, steps, WELD);
    const faces = facesOf(net);
    expect(faces.map(({ area }) => area)).toEqual([16, 384]);
    const outline = outlineOf(faces[1]!, net.places);
    expect(outline).not.toContain(8);
    expect(isInside(pointsOf(outline, places), { x: 0, y: 0 })).toBe(false);
    expect(isInside(pointsOf(outline, places), { x: 0, y: 6 })).toBe(true);
    return { face: faces[1]!, outline };
  };
  expect(between([...ring(0), ...ring(4), spur]).face.holes.length).toBe(1);
  expect(between([...ring(0), ...ring(4), spur, [0, 4]]).face.holes.length).toBe(0);
});

test('nothing encloses nothing', () => {
  expect(facesOf(netOf([], [], WELD))).toEqual([]);
  expect(facesOf(netOf([{ x: 0, y: 0 }], [[0, 0]], WELD))).toEqual([]);
});

function properlyCross([a, b, c, d]: readonly Point[]): boolean {
  const side = (p: Point, q: Point, r: Point) => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  const apart = (one: number, other: number) =>
    (one > 1e-9 && other < -1e-9) || (one < -1e-9 && other > 1e-9);
  return apart(side(a!, b!, c!), side(a!, b!, d!)) && apart(side(c!, d!, a!), side(c!, d!, b!));
}

const nameOf = (one: number, other: number) => (one < other ? `${one} ${other}` : `${other} ${one}`);

const edgesOf = (round: readonly number[]) =>
  round.map((corner, at) => nameOf(corner, round[(at + 1) % round.length]!));

/** The step that a ray meets first. */
function firstMet(from: Point, turn: number, { places, steps }: Net): string | null {
  const ray = { x: Math.cos(turn), y: Math.sin(turn) };
  let best: string | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const [one, other] of steps) {
    const [a, b] = [places[one]!, places[other]!];
    const along = { x: b.x - a.x, y: b.y - a.y };
    const across = cross(ray, along);
    const off = { x: a.x - from.x, y: a.y - from.y };
    const far = cross(off, along) / across;
    const share = cross(off, ray) / across;
    if (!(share >= 0 && share <= 1 && far > 0 && far < least)) continue;
    least = far;
    best = nameOf(one, other);
  }
  return best;
}
