import { type Box, heightOf, widthOf } from '#base/geometry/box.ts';
import { cross, distance, type Point, subtract } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { MotifRecipe, MotifShape } from '#pattern/recipe/motif.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import { Clearing } from './clearing.ts';
import { type Frame, figure } from './frame.ts';
import { pinsAlong, shareOut } from './pins.ts';
import { type Shape, shapeOf } from './shape.ts';

/** A motif of the first repeat that fits its frame: its outline, and the pins of each part of it. */
export interface FittedMotif {
  readonly shape: Shape;
  readonly clearing: Clearing;
  readonly parts: readonly (readonly Point[])[];
}

export function fitMotifs(recipe: MotifRecipe, frame: Frame): Result<readonly FittedMotif[], DraftTrouble> {
  const fitted: FittedMotif[] = [];
  for (const [k, motif] of recipe.motifs.entries()) {
    const twin = motif.outline.findIndex((knot, n) => distance(knot, motif.outline.at(n - 1)!) < TWIN);
    if (twin >= 0) {
      const name = `motifs.${k}.outline.${twin}.x`;
      return failed(figure(name, motif.outline[twin]!.x, 'mm', 'pins-too-close'));
    }
    const shape = shapeOf(motif);
    const crossing = crossingOf(shape);
    if (crossing) return failed(atKnot(motif, k, shape, crossing, 'crosses-itself'));
    const trouble = outOfRoom(recipe, shape, frame, k);
    if (trouble) return failed(trouble);
    const parts = fitPins(motif, shape, frame, recipe.spacing, k);
    if (!parts.ok) return parts;
    const clearing = new Clearing(shape, frame.clearance);
    const other = fitted.findIndex((earlier) => meet(earlier, { shape, clearing }, frame.clearance));
    if (other >= 0) return failed(overlap(recipe, k, shape, fitted, frame));
    fitted.push({ shape, clearing, parts: parts.value });
  }
  return done(fitted);
}

/** The figure of the outline's point that lies nearest to a place. */
function atKnot(
  { outline }: MotifShape,
  k: number,
  { knots }: Shape,
  place: Point,
  why: DraftTrouble['why'],
): DraftTrouble {
  const away = knots.map((knot) => distance(knot, place));
  const nearest = away.indexOf(Math.min(...away));
  return figure(`motifs.${k}.outline.${nearest}.x`, outline[nearest]!.x, 'mm', why);
}

/** Where two steps of the chain cross each other; null where none do. */
function crossingOf({ chain }: Shape): Point | null {
  const index = new PointIndex(chain);
  const at = (n: number) => chain[n % chain.length]!;
  const longest = chain.reduce((most, point, n) => Math.max(most, distance(point, at(n + 1))), 0);
  for (const [n, from] of chain.entries()) {
    for (const other of index.within(from, 2 * longest)) {
      const apart = Math.abs(other - n);
      if (other <= n || apart <= 1 || apart >= chain.length - 1) continue;
      if (!crossEachOther(from, at(n + 1), at(other), at(other + 1))) continue;
      return from;
    }
  }
  return null;
}

function crossEachOther(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (from: Point, to: Point, point: Point) => cross(subtract(to, from), subtract(point, from));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function outOfRoom(recipe: MotifRecipe, shape: Shape, frame: Frame, k: number): DraftTrouble | null {
  const { room } = frame;
  const { box } = shape;
  const { at } = recipe.motifs[k]!;
  const most = largestClearance(shape, frame);
  if (most < frame.clearance - ROUNDING && most >= LEAST_SPACING && recipe.clearance !== undefined)
    return figure('clearance', frame.clearance, 'mm', 'leaves-no-ground', { most, nearest: most });
  if (widthOf(box) > widthOf(room)) {
    // One column more than it just needs, since the width is taken to whole columns.
    const least = widthOf(box) + 2 * frame.clearance + frame.lattice.column;
    return figure('width', recipe.width, 'mm', 'does-not-fit', { least, nearest: least });
  }
  if (heightOf(box) > heightOf(room)) {
    const least = Math.ceil((heightOf(box) + 2 * frame.clearance) / recipe.spacing);
    return figure('length', recipe.length, 'count', 'does-not-fit', { least, nearest: least });
  }
  const across = shift(box.left, box.right, room.left, room.right);
  if (across) return placed(`motifs.${k}.at.x`, at.x, across);
  const down = shift(box.top, box.bottom, room.top, room.bottom);
  return down ? placed(`motifs.${k}.at.y`, at.y, down) : null;
}

/** The clearance at which the edges of the strip just keep their pins, the motif lying where it does. */
const largestClearance = ({ box }: Shape, { columns, lattice, step }: Frame): number =>
  Math.min(box.left, box.top, columns * lattice.column - box.right, step - box.bottom);

interface Shift {
  readonly least: number;
  readonly most: number;
}

/** How far an outline may be moved along one axis; null where it lies well as it is. */
function shift(from: number, to: number, least: number, most: number): Shift | null {
  return from >= least - ROUNDING && to <= most + ROUNDING ? null : { least: least - from, most: most - to };
}

const placed = (name: string, given: number, { least, most }: Shift): DraftTrouble =>
  figure(name, given, 'mm', 'does-not-fit', {
    least: given + least,
    most: given + most,
    nearest: given + (least > 0 ? least : most),
  });

const ROUNDING = 1e-9;

/** Two points of an outline nearer than this, mm, are one: no curve goes from one to the other. */
const TWIN = 0.001;

/** An outline whose pins stand farther apart than this many footside spacings does not hold its shape. */
const MOST_APART = 2;

function fitPins(
  motif: MotifShape,
  shape: Shape,
  frame: Frame,
  spacing: number,
  k: number,
): Result<readonly (readonly Point[])[], DraftTrouble> {
  const name = `motifs.${k}.pins`;
  const counts = shareOut(shape, motif.pins, frame.apart);
  const parts = pinsAlong(shape, counts);
  const given = counts.reduce((total, count) => total + count, 0);
  const least = Math.max(LEAST_PINS, leastCount(shape, MOST_APART * spacing));
  if (given < least) return failed(figure(name, given, 'count', 'too-few-pins', { least, nearest: least }));
  const crowded = crowdedPin(parts);
  if (crowded === null) return done(parts);
  for (let count = Math.min(given - 1, Math.floor(shape.length / LEAST_SPACING)); count >= least; ) {
    const fewer = pinsAlong(shape, shareOut(shape, count, frame.apart));
    if (crowdedPin(fewer) === null) {
      // Where the recipe names no number, it is as many as fit.
      if (motif.pins === undefined) return done(fewer);
      const most = count;
      return failed(figure(name, given, 'count', 'pins-too-close', { least, most, nearest: most }));
    }
    count -= Math.max(1, Math.floor(count / 32));
  }
  return failed(atKnot(motif, k, shape, crowded, 'crosses-too-tightly'));
}

const LEAST_PINS = 3;

/** The fewest pins of which, shared out among the parts, no two neighbours stand farther apart than this. */
function leastCount(shape: Shape, apart: number): number {
  const wide = (count: number) =>
    shareOut(shape, count, apart).some((each, part) => shape.parts[part]!.length / each > apart + ROUNDING);
  let count = Math.max(shape.parts.length, Math.ceil(shape.length / apart));
  while (wide(count)) count++;
  return count;
}

/** A pin that stands too near another one; null where none does. */
function crowdedPin(parts: readonly (readonly Point[])[]): Point | null {
  const pins = parts.flat();
  const index = new PointIndex(pins);
  return pins.find((_, pin) => index.nearestTo(pin, LEAST_SPACING) < LEAST_SPACING - ROUNDING) ?? null;
}

type Outlined = Pick<FittedMotif, 'shape' | 'clearing'>;

/** Whether two outlines come nearer to each other than the clearance, or one lies within the other. */
function meet(one: Outlined, other: Outlined, clearance: number): boolean {
  const touches = (from: Outlined, { chain }: Shape) =>
    chain.some((point) => from.clearing.sideOf(point, clearance) !== 'outside');
  return (
    boxesMeet(one.shape.box, other.shape.box, clearance) &&
    (touches(one, other.shape) || touches(other, one.shape))
  );
}

const boxesMeet = (one: Box, other: Box, clearance: number): boolean =>
  one.left < other.right + clearance &&
  other.left < one.right + clearance &&
  one.top < other.bottom + clearance &&
  other.top < one.bottom + clearance;

/** The nearest place across or down where the motif's box clears those of all earlier ones, where there is one. */
function overlap(
  recipe: MotifRecipe,
  k: number,
  { box }: Shape,
  others: readonly FittedMotif[],
  { room, clearance }: Frame,
): DraftTrouble {
  const { at } = recipe.motifs[k]!;
  const isFree = (dx: number, dy: number) => {
    const moved = { left: box.left + dx, right: box.right + dx, top: box.top + dy, bottom: box.bottom + dy };
    return (
      moved.left >= room.left &&
      moved.right <= room.right &&
      moved.top >= room.top &&
      moved.bottom <= room.bottom &&
      others.every(({ shape }) => !boxesMeet(shape.box, moved, clearance))
    );
  };
  const across = others
    .flatMap(({ shape }) => [shape.box.right + clearance - box.left, shape.box.left - clearance - box.right])
    .filter((by) => isFree(by, 0));
  const down = others
    .flatMap(({ shape }) => [shape.box.bottom + clearance - box.top, shape.box.top - clearance - box.bottom])
    .filter((by) => isFree(0, by));
  const least = (ways: readonly number[]) =>
    ways.reduce((best, way) => (Math.abs(way) < Math.abs(best) ? way : best), Infinity);
  const [dx, dy] = [least(across), least(down)];
  const [axis, by] = Math.abs(dx) <= Math.abs(dy) ? (['x', dx] as const) : (['y', dy] as const);
  return figure(
    `motifs.${k}.at.${axis}`,
    at[axis],
    'mm',
    'motifs-overlap',
    Number.isFinite(by) ? { nearest: at[axis] + by } : {},
  );
}
