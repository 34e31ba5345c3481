import { alongLine, fitStraight, type StraightLine } from '#base/fit/straight.ts';
import { add, length, type Point, scale, unit } from '#base/geometry/point.ts';
import type { PrickingPass } from '#pattern/order.ts';
import type { Lattice } from '#pattern/structure.ts';

type Step = readonly [number, number];

/**
 * The ruler settings that cover some pins of a lattice, in a sweep from one side to the other: neighbouring lines follow
 * each other, and each is pricked in the direction opposite to the last, so that the hand never goes far. Of the
 * lattice's short directions the one is taken that needs the fewest settings; of two that need as few, the one with the
 * closer pins. A line lies across gaps. `wanted` holds positions in `lattice.pins`.
 */
export function rulerPasses(
  lattice: Lattice,
  wanted: readonly number[],
  pins: readonly Point[],
  kind: PrickingPass['kind'],
): PrickingPass[] {
  const along = fewestLines(lattice, wanted);
  const lines = linesAlong(along, lattice, wanted);
  return [...lines.keys()]
    .sort((one, other) => one - other)
    .map((key, at) => {
      const order = lines.get(key)!.map((position) => lattice.pins[position]!);
      const direction = unit(stepOf(lattice, along));
      const line = lineThrough(order, pins, direction);
      order.sort((one, other) => alongLine(line, pins[one]!) - alongLine(line, pins[other]!));
      if (at % 2 === 1) order.reverse();
      return { kind, ruler: rulerAlong(line, order, pins), order };
    });
}

/** How a ruler lies along pins that are already in order. */
export const rulerAlong = (
  line: StraightLine,
  order: readonly number[],
  pins: readonly Point[],
): { from: Point; to: Point } => {
  const foot = (index: number) => add(line.through, scale(line.direction, alongLine(line, pins[index]!)));
  const [from, to] = [foot(order[0]!), foot(order.at(-1)!)];
  // A single pin is a place, not a line: the ruler then lies through it the way the others lie.
  return order.length > 1 ? { from, to } : { from, to: add(to, line.direction) };
};

/** One or two pins say too little about a line; then it runs the way the lattice does. */
function lineThrough(order: readonly number[], pins: readonly Point[], direction: Point): StraightLine {
  const line = fitStraight(order.map((index) => pins[index]!));
  if (order.length < 3) return { through: line.through, direction };
  const forward = line.direction.x * direction.x + line.direction.y * direction.y >= 0;
  return forward ? line : { through: line.through, direction: scale(line.direction, -1) };
}

/** Steps without a common factor, of at most two cells each way; the opposite of each is the same line. */
const SHORT_STEPS: readonly Step[] = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
  [2, 1],
  [1, 2],
  [2, -1],
  [1, -2],
];

function fewestLines(lattice: Lattice, wanted: readonly number[]): Step {
  const judged = SHORT_STEPS.map((step) => ({
    step,
    settings: new Set(wanted.map((position) => lineOf(lattice.nodes[position]!, step))).size,
    closeness: length(stepOf(lattice, step)),
  }));
  judged.sort((one, other) => one.settings - other.settings || one.closeness - other.closeness);
  return judged[0]!.step;
}

function linesAlong(step: Step, lattice: Lattice, wanted: readonly number[]): Map<number, number[]> {
  const lines = new Map<number, number[]>();
  for (const position of wanted) {
    const key = lineOf(lattice.nodes[position]!, step);
    const line = lines.get(key);
    if (line) line.push(position);
    else lines.set(key, [position]);
  }
  return lines;
}

/** Nodes on one line along the step, and only those, share this number; neighbouring lines differ by 1. */
const lineOf = ([i, j]: Step, [p, q]: Step): number => q * i - p * j;

const stepOf = ({ a, b }: Lattice, [p, q]: Step): Point => add(scale(a, p), scale(b, q));
