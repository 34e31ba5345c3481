import type { Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { FrameRecipe } from '#pattern/recipe/frame.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import { type Layout, layoutOf } from '../strip/layout.ts';
import type { Place } from '../strip/shape.ts';
import { draftStrip } from '../strip/strip.ts';
import { type DraftTrouble, MOST_PINS } from '../trouble.ts';
import { type Corner, cornerOf } from './corner.ts';
import { type FrameFigures, figuresOf } from './figures.ts';
import { isPressed, type Mitre, mitredPlace, mitreOf } from './mitre.ts';

/**
 * One side of a frame. Its places are counted in columns outward from the footside and in rows along it, clockwise
 * round the frame, from the footside pin of the corner that it starts at (or from where it is cut off).
 */
export interface Side {
  readonly name: 'n' | 'e' | 's' | 'w';
  /** Rows from the first footside pin to the last. */
  readonly rows: number;
  readonly repeats: number;
  /** The row at which its first repeat begins; before the corner's own pin where it starts at a corner. */
  readonly phase: number;
  /** The sides round the corners; null where it is cut off. */
  readonly before: number | null;
  readonly after: number | null;
  readonly toSheet: (place: Point) => Point;
}

/** Where everything of a frame lies: what pins, lines and areas are then read from. */
export interface FrameLayout {
  readonly recipe: FrameFigures;
  readonly strip: Layout;
  readonly mitre: Mitre;
  readonly corner: Corner;
  /** In their order round the frame. */
  readonly sides: readonly Side[];
}

export function frameLayoutOf(given: FrameRecipe): Result<FrameLayout, DraftTrouble> {
  const recipe = figuresOf(given);
  const oneRepeat = stripOf(recipe);
  const strip = layoutOf(oneRepeat);
  if (!strip.ok) return strip;
  const sound = draftStrip(oneRepeat);
  if (!sound.ok) return sound;
  const mitre = mitreOf(recipe.spacing, recipe.angle, recipe.tolerance);
  if (!mitre.ok) return mitre;
  const corner = cornerOf(recipe, strip.value, mitre.value);
  const trouble = repeatTrouble(recipe, strip.value, mitre.value, corner);
  if (trouble) return failed(trouble);
  return done({
    recipe,
    strip: strip.value,
    mitre: mitre.value,
    corner,
    sides: sidesOf(recipe, strip.value, corner),
  });
}

/** The last column that holds ground in a row of a side. */
export function edgeAt({ strip, corner }: FrameLayout, side: Side, j: number): number {
  if (side.before !== null && j < corner.beside) return corner.edge(j);
  if (side.after !== null && side.rows - j < corner.beside) return corner.edge(side.rows - j);
  const { edge, unit } = strip;
  return edge[(((j - side.phase) % unit) + unit) % unit]!;
}

/** The rows in which a side has places, from the first to the last. */
export const rowsOf = ({ corner }: FrameLayout, side: Side): readonly [number, number] => [
  side.before === null ? 0 : -corner.top,
  side.after === null ? side.rows : side.rows + corner.top,
];

/** A place by the side that it belongs to: those beyond a mitre, and on the one at its end, are the neighbour's. */
export interface SidePlace {
  readonly side: Side;
  readonly i: number;
  readonly j: number;
}

export function ownPlace({ sides }: FrameLayout, side: Side, [i, j]: Place): SidePlace {
  if (side.before !== null && i + j < 0) {
    const before = sides[side.before]!;
    return { side: before, i: -j, j: before.rows + i };
  }
  if (side.after !== null && i + side.rows - j <= 0)
    return { side: sides[side.after]!, i: j - side.rows, j: -i };
  return { side, i, j };
}

/** The id of the pin at a place: rows are counted from the corner, so that more repeats leave the pins their names. */
export function pinAt(layout: FrameLayout, from: Side, place: Place): string {
  const { side, i, j } = ownPlace(layout, from, place);
  const row = side.before === null ? j - side.rows : j;
  return `${side.name}${i}.${row}`;
}

export function placeAt(layout: FrameLayout, from: Side, place: Place): Point {
  const { side, i, j } = ownPlace(layout, from, place);
  return side.toSheet(localPlace(layout, side, i, j));
}

/** Where a place of a side lies on it, x outward and y along: by the mitre that is nearer. */
export function localPlace({ mitre }: FrameLayout, side: Side, i: number, j: number): Point {
  const fromEnd = side.rows - j;
  if (side.after === null || (side.before !== null && j <= fromEnd)) return mitredPlace(mitre, i, j);
  const { x, y } = mitredPlace(mitre, i, fromEnd);
  return { x, y: side.rows * mitre.lattice.row - y };
}

/** A strip of one repeat with the figures of the sides. */
function stripOf({ spacing, angle, length, width, headside, areas }: FrameFigures): StripRecipe {
  const figures = { spacing, angle, length, width, headside, areas };
  return { kind: 'strip', repeats: 1, ground: 'plain', ...figures };
}

/** Rows of a side between its corners' footside pins: whole repeats, less what of them lies beyond those pins. */
export const rowsBetween = (repeats: number, period: number, phase: number): number =>
  repeats * period + 2 * phase;

function sidesOf(recipe: FrameRecipe, { period, lattice }: Layout, { first }: Corner): Side[] {
  const { across, down, part } = recipe;
  if (part === 'corner') {
    const north = across * period + first;
    const length = north * lattice.row;
    return [
      {
        name: 'n',
        rows: north,
        repeats: across,
        phase: 0,
        before: null,
        after: 1,
        toSheet: ({ x, y }) => ({ x: y - length, y: -x }),
      },
      {
        name: 'e',
        rows: down * period + first,
        repeats: down,
        phase: first,
        before: 0,
        after: null,
        toSheet: ({ x, y }) => ({ x, y }),
      },
    ];
  }
  const [wide, high] = [across, down].map((repeats) => rowsBetween(repeats, period, first)) as [
    number,
    number,
  ];
  const [right, foot] = [wide * lattice.row, high * lattice.row];
  const side = (name: Side['name'], at: number, toSheet: Side['toSheet']): Side => ({
    name,
    rows: at % 2 === 0 ? wide : high,
    repeats: at % 2 === 0 ? across : down,
    phase: first,
    before: (at + 3) % 4,
    after: (at + 1) % 4,
    toSheet,
  });
  return [
    side('n', 0, ({ x, y }) => ({ x: y, y: -x })),
    side('e', 1, ({ x, y }) => ({ x: right + x, y })),
    side('s', 2, ({ x, y }) => ({ x: right - y, y: foot + x })),
    side('w', 3, ({ x, y }) => ({ x: -x, y: foot - y })),
  ];
}

/** What belongs to a side's two corners must not meet, and no file takes more pins than `MOST_PINS`. */
function repeatTrouble(
  recipe: FrameRecipe,
  { period, widest }: Layout,
  mitre: Mitre,
  corner: Corner,
): DraftTrouble | null {
  const pressed = isPressed(mitre) ? mitre.reach * Math.max(widest, corner.top) : 0;
  const own = Math.max(1, corner.beside, pressed);
  const corners = recipe.part === 'frame' ? 2 : 1;
  const least = Math.ceil((corners * (own - corner.first)) / period);
  // About a pin and two working lines stand at every second place.
  const most = Math.floor(MOST_PINS / (4 * period * (widest + 1)));
  for (const figure of ['across', 'down'] as const) {
    const given = recipe[figure];
    const trouble = { kind: 'recipe-figure', figure, given, unit: 'count', least, most } as const;
    if (given < least) return { ...trouble, nearest: least, why: 'corner-does-not-divide' };
    if (given > most) return { ...trouble, nearest: most, why: 'too-many-pins' };
  }
  return null;
}
