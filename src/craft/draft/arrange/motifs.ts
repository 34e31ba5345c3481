import { boxOf } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { anchorPoint } from '#pattern/anchors.ts';
import type { Anchor, Pattern, RunRole } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';

/** What belongs to one motif: pins by id, places that are at no pin, and the middle of its pins (else of its places). */
export interface Motif {
  readonly pins: readonly string[];
  readonly places: readonly Point[];
  readonly middle: Point;
}

/**
 * The motifs of a pattern: areas of any stitch but ground, closed outlines and gimps, each with the pins on and within
 * it; those that share a pin are one motif. Pins of the footside belong to none.
 */
export function motifsOf(pattern: Pattern, footside: ReadonlySet<string>): Motif[] {
  const byId = pinsById(pattern);
  const index = new PointIndex(pattern.pins);
  const within = (outline: readonly Point[]): Anchor[] =>
    index.inBox(boxOf(outline)).flatMap((at) => {
      const pin = pattern.pins[at]!;
      return isInside(outline, pin) ? { pin: pin.id } : [];
    });

  const shapes = shapesOf(pattern).map(({ path, closed }) =>
    closed ? [...path, ...within(path.map((anchor) => anchorPoint(byId, anchor)))] : path,
  );
  const groups = new Groups();
  for (const [shape, anchors] of shapes.entries()) {
    for (const anchor of anchors) {
      if ('pin' in anchor && !footside.has(anchor.pin)) groups.join(`shape ${shape}`, anchor.pin);
    }
  }
  const gathered = new Map<string, { pins: Set<string>; places: Point[] }>();
  for (const [shape, anchors] of shapes.entries()) {
    const leader = groups.leaderOf(`shape ${shape}`);
    const motif = gathered.get(leader) ?? { pins: new Set<string>(), places: [] };
    gathered.set(leader, motif);
    for (const anchor of anchors) {
      if (!('pin' in anchor)) motif.places.push(anchor);
      else if (!footside.has(anchor.pin)) motif.pins.add(anchor.pin);
    }
  }
  return [...gathered.values()]
    .filter(({ pins, places }) => pins.size + places.length > 0)
    .map(({ pins, places }) => ({
      pins: [...pins],
      places,
      middle: middleOf(pins.size > 0 ? [...pins].map((id) => byId.get(id)!) : places),
    }));
}

function shapesOf({ areas, runs, marks }: Pattern): { path: readonly Anchor[]; closed: boolean }[] {
  return [
    ...areas
      .filter(({ stitch }) => stitch !== 'ground')
      .map(({ outline }) => ({ path: outline, closed: true })),
    ...runs
      .filter(({ closed, role }) => closed && !EDGES.has(role))
      .map(({ pins }) => ({ path: pins.map((pin) => ({ pin })), closed: true })),
    ...marks.flatMap((mark) => (mark.kind === 'gimp' ? { path: mark.path, closed: mark.closed } : [])),
  ];
}

/** An edge that goes right round holds the whole pattern in it, and makes it no motif. */
const EDGES: ReadonlySet<RunRole> = new Set(['footside', 'headside']);

function middleOf(places: readonly Point[]): Point {
  let [x, y] = [0, 0];
  for (const place of places) {
    x += place.x / places.length;
    y += place.y / places.length;
  }
  return { x, y };
}

/** Names that belong together (R. E. Tarjan, JACM 22 (1975) 215): joined by pairs, asked for by their leader. */
class Groups {
  readonly #above = new Map<string, string>();

  leaderOf(name: string): string {
    let leader = name;
    for (let up = this.#above.get(leader); up !== undefined; up = this.#above.get(leader)) leader = up;
    for (let at = name; at !== leader; ) {
      const up = this.#above.get(at)!;
      this.#above.set(at, leader);
      at = up;
    }
    return leader;
  }

  join(one: string, other: string): void {
    const [a, b] = [this.leaderOf(one), this.leaderOf(other)];
    if (a !== b) this.#above.set(b, a);
  }
}
