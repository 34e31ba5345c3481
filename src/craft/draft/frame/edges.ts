import { distance, type Point } from '#base/geometry/point.ts';
import type { Run } from '#pattern/pattern.ts';
import type { Drafting } from '../drafting.ts';
import { alongArc, arcOver, fanArc, scallopArc } from '../strip/arc.ts';
import type { Place } from '../strip/shape.ts';
import type { CornerArc } from './corner.ts';
import { edgeAt, type FrameLayout, localPlace, pinAt, rowsOf, type Side } from './layout.ts';
import type { Lines } from './lines.ts';

/** Each side's footside is a straight run of its own, from corner pin to corner pin. */
export function draftFootsides(drafting: Drafting, layout: FrameLayout, lines: Lines): void {
  for (const side of layout.sides) {
    const pins = Array.from({ length: side.rows / 2 + 1 }, (_, k) => pinAt(layout, side, [0, 2 * k]));
    drafting.run({
      id: `${side.name}foot`,
      pins,
      shape: 'line',
      closed: false,
      role: 'footside',
      even: true,
    });
    lines.chain(pins);
  }
}

/** The headside is one run, right round the corners. */
export function draftHeadside(drafting: Drafting, layout: FrameLayout, lines: Lines): void {
  const { headside } = layout.recipe;
  const parts =
    headside.kind === 'fans' || headside.kind === 'scallops'
      ? layout.sides.flatMap((side) => draftArcs(drafting, layout, side, headside, lines))
      : layout.sides.map((side) => rimOf(layout, side, ...rowsOf(layout, side)));
  const pins = parts.flat().filter((id, at, all) => id !== all[at - 1]);
  const closed = pins[0] === pins.at(-1);
  lines.chain(pins);
  if (closed) pins.pop();
  drafting.run({
    id: 'headside',
    pins,
    shape: 'curve',
    closed,
    role: 'headside',
    even: isEven(drafting, pins),
  });
}

type Curved = Extract<FrameLayout['recipe']['headside'], { kind: 'fans' | 'scallops' }>;

function draftArcs(
  drafting: Drafting,
  layout: FrameLayout,
  side: Side,
  headside: Curved,
  lines: Lines,
): Run['pins'][] {
  const { unit, lattice } = layout.strip;
  const { width } = layout.recipe;
  const { arc: corner } = layout.corner;
  const own =
    headside.kind === 'fans'
      ? fanArc(lattice, width, unit, headside.depthShare)
      : scallopArc(lattice, width, unit, headside.depthShare);
  const depth = own.centre.x + own.radius - own.from.x;
  // the arcs of a side end on the points of the ground, or on its straight edge
  const column = headside.kind === 'fans' ? width + unit / 2 : width;
  const parts =
    side.before === null || corner === null
      ? []
      : [draftCorner(drafting, layout, side, corner, headside, lines)];
  // where two fans became one at a corner, the side has one less
  const shared = headside.kind === 'fans' ? 1 : 0;
  const arcs = (side.repeats * layout.strip.period) / unit;
  const from = side.before === null ? 0 : shared;
  const to = arcs - (side.after === null ? 0 : shared);
  for (let k = from; k < to; k++) {
    const rows = [side.phase + k * unit, side.phase + (k + 1) * unit] as const;
    const [top, bottom] = rows.map((row) => localPlace(layout, side, column, row)) as [Point, Point];
    const places = alongArc(arcOver(top, bottom.y - top.y, depth), headside.pins);
    // arcs are counted from the corner, so that they keep their names when there are more of them
    const name = `${side.name}h${side.before === null ? k - arcs : k}`;
    parts.push(
      drawArc(drafting, {
        name,
        headside,
        places: places.map(side.toSheet),
        ends: rows.map((row) => pinAt(layout, side, [column, row])) as [string, string],
        rim: rimOf(layout, side, ...rows),
        lines,
      }),
    );
  }
  return parts;
}

function draftCorner(
  drafting: Drafting,
  layout: FrameLayout,
  side: Side,
  { centre, radius, half, pins, column, row }: CornerArc,
  headside: Curved,
  lines: Lines,
): string[] {
  const before = layout.sides[side.before!]!;
  const places = Array.from({ length: pins }, (_, k): Point => {
    const turn = half * ((2 * k) / (pins - 1) - 1) - Math.PI / 4;
    return side.toSheet({ x: centre.x + radius * Math.cos(turn), y: centre.y + radius * Math.sin(turn) });
  });
  const [, last] = rowsOf(layout, before);
  const [first] = rowsOf(layout, side);
  return drawArc(drafting, {
    name: `${side.name}h`,
    headside,
    places,
    ends: [pinAt(layout, before, [column, before.rows - row]), pinAt(layout, side, [column, row])],
    rim: [...rimOf(layout, before, before.rows - row, last), ...rimOf(layout, side, first + 1, row)],
    lines,
  });
}

interface Drawn {
  readonly name: string;
  readonly headside: Curved;
  readonly places: readonly Point[];
  readonly ends: readonly [string, string];
  /** The last pins of the ground beneath, from end to end. */
  readonly rim: readonly string[];
  readonly lines: Lines;
}

/** Pins of one arc, its area, and the workers' ways from the rim of the ground, spread evenly over it. */
function drawArc(drafting: Drafting, { name, headside, places, ends, rim, lines }: Drawn): string[] {
  const last = places.length - 1;
  const pins = places.map((place, k) => {
    if (k === 0 || k === last) return ends[k === 0 ? 0 : 1];
    return drafting.pin(`${name}.${k}`, place);
  });
  for (const [k, end] of [
    [0, ends[0]],
    [last, ends[1]],
  ] as const)
    if (!drafting.has(end)) drafting.pin(end, places[k]!);
  lines.chain(pins);
  for (let k = 1; k < last; k++) lines.draw(rim[Math.round((k * (rim.length - 1)) / last)]!, pins[k]!);
  const outline = [...pins, ...rim.filter((pin) => !ends.includes(pin)).reverse()].map((pin) => ({ pin }));
  drafting.area({
    id: name,
    outline,
    stitch: headside.stitch,
    ...(headside.tint && { tint: headside.tint }),
  });
  return pins;
}

/** The last pins of the ground from one row of a side to another. */
function rimOf(layout: FrameLayout, side: Side, from: number, to: number): string[] {
  return Array.from({ length: to - from + 1 }, (_, k) => from + k).flatMap((j) => {
    const place: Place = [edgeAt(layout, side, j), j];
    return (place[0] + j) % 2 === 0 ? [pinAt(layout, side, place)] : [];
  });
}

function isEven(drafting: Drafting, pins: readonly string[]): boolean {
  const places = pins.map((pin) => drafting.placeOf(pin));
  const steps = places.slice(1).map((place, k) => distance(place, places[k]!));
  return Math.max(...steps) - Math.min(...steps) < 1e-6;
}
