import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { StripHeadside } from '#pattern/recipe/strip-edge.ts';
import type { Drafting } from '../drafting.ts';
import type { DraftTrouble } from '../trouble.ts';
import { type Arc, alongArc, fanArc, leastBetween, leastOnArc, mostOnArc, scallopArc } from './arc.ts';
import { countTrouble } from './figure.ts';
import { pinAt } from './ground.ts';
import { edgeAt, type Layout, placeAt } from './layout.ts';

type Curved = Extract<StripHeadside, { kind: 'fans' | 'scallops' }>;

/** Pins along the arcs of a curved headside, its areas and working lines; needs the pins of the ground. */
export function draftArcs(drafting: Drafting, layout: Layout, headside: Curved): Result<null, DraftTrouble> {
  const { unit, rows } = layout;
  const arc = arcOf(layout, headside);
  const trouble = tooFar(layout, headside, arc) ?? tooClose(layout, headside, arc);
  if (trouble) return failed(trouble);
  const places = alongArc(arc, headside.pins);
  for (let top = 0; top < rows; top += unit) draftArc(drafting, layout, headside, places, top);
  return done(null);
}

function draftArc(
  drafting: Drafting,
  layout: Layout,
  { pins: count, stitch, tint }: Curved,
  places: readonly Point[],
  top: number,
): void {
  const { unit, lattice } = layout;
  const name = `h${top / unit}`;
  const rim = rimOf(layout, top, top + unit);
  const pins = places.map(({ x, y }, k) => {
    if (k === 0) return rim[0]!;
    if (k === count - 1) return rim.at(-1)!;
    return drafting.pin(`${name}.${k}`, { x, y: y + top * lattice.row });
  });
  drafting.run({ id: name, pins, shape: 'curve', closed: false, role: 'headside', even: true });
  for (let k = 1; k < count; k++) line(drafting, pins[k - 1]!, pins[k]!);
  // The workers go from each pin of the arc to the rim of the ground, spread evenly over it.
  for (let k = 1; k < count - 1; k++) {
    const at = Math.round((k * (rim.length - 1)) / (count - 1));
    line(drafting, rim[at]!, pins[k]!);
  }
  const outline = [...pins, ...rim.slice(1, -1).reverse()].map((pin) => ({ pin }));
  drafting.area({ id: name, outline, stitch, ...(tint && { tint }) });
}

/** The last pins of the ground from one row to another. */
export const rimOf = (layout: Layout, from: number, to: number): string[] =>
  rimPlaces(layout, from, to).map(([i, j]) => pinAt(layout, i, j));

function rimPlaces(layout: Layout, from: number, to: number): [number, number][] {
  return Array.from({ length: to - from + 1 }, (_, k) => from + k).flatMap((j): [number, number][] => {
    const i = edgeAt(layout, j);
    return (i + j) % 2 === 0 ? [[i, j]] : [];
  });
}

/** A working line, named after its pins. */
export function line(drafting: Drafting, from: string, to: string): void {
  drafting.mark({ id: `${from}-${to}`, kind: 'line', from: { pin: from }, to: { pin: to } });
}

const arcOf = ({ lattice, recipe, unit }: Layout, { kind, depthShare }: Curved): Arc =>
  (kind === 'fans' ? fanArc : scallopArc)(lattice, recipe.width, unit, depthShare);

/** Trouble where so few pins would not hold the edge, nor show which way it goes. */
function tooFar({ lattice }: Layout, { pins }: Curved, arc: Arc): DraftTrouble | null {
  const across = Math.hypot(lattice.column, lattice.row);
  const widest = WIDEST * Math.max(2 * lattice.row, Math.min(across, 3 * lattice.row));
  const least = Math.max(3, leastOnArc(arc, widest));
  return pins >= least
    ? null
    : countTrouble('headside.pins', pins, 'pins-too-far', { least, nearest: least });
}

/** Pins of an arc stand at most so many footside spacings apart, and half as far again on steep ground. Our own choice. */
const WIDEST = 1.25;

/** Trouble where pins of an arc would stand too near to each other, to the next arc's or to the ground. */
function tooClose(layout: Layout, { pins }: Curved, arc: Arc): DraftTrouble | null {
  const ground = rimPlaces(layout, 1, layout.unit - 1).map(([i, j]) => placeAt(layout, i, j));
  const fits = (count: number): boolean => {
    const inner = alongArc(arc, count).slice(1, -1);
    // The next arc begins with the mirror image of this one's end.
    const across = 2 * Math.min(...inner.map(({ y }) => y));
    return across >= layout.clearance && leastBetween(inner, ground) >= layout.clearance;
  };
  let most = mostOnArc(arc, layout.clearance);
  if (pins <= most && fits(pins)) return null;
  most = Math.min(most, pins);
  while (most >= 3 && !fits(most)) most--;
  return countTrouble(
    'headside.pins',
    pins,
    'pins-too-close',
    most < 3 ? {} : { least: 3, most, nearest: most },
  );
}
