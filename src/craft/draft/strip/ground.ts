import { done, failed, type Result } from '#base/result.ts';
import type { Drafting } from '../drafting.ts';
import { type Ground, groundNamed } from '../grounds/index.ts';
import { type DraftTrouble, MOST_PINS } from '../trouble.ts';
import type { Cells } from './cells.ts';
import { countTrouble } from './figure.ts';
import { edgeAt, type Layout, placeAt } from './layout.ts';

/** The id of the pin at a place: footsides and a straight headside keep their names when the width is changed. */
export function pinAt({ recipe: { headside, width } }: Layout, i: number, j: number): string {
  if (i === 0) return `f${j}`;
  const isStraight = headside.kind === 'straight' || headside.kind === 'footside';
  return isStraight && i === width ? `e${j}` : `g${i}.${j}`;
}

/**
 * Pins and working lines of the ground, both edges and the outlines of areas among them; nothing within areas but the
 * centres of spiders.
 */
export function draftGround(drafting: Drafting, layout: Layout, cells: Cells): Result<null, DraftTrouble> {
  const { recipe, rows, period } = layout;
  const ground = groundNamed(recipe.ground);
  if (period % ground.rows !== 0) {
    const step = ground.rows / 2;
    const nearest = Math.max(step, Math.round(recipe.length / step) * step);
    return failed(countTrouble('length', recipe.length, 'repeat-does-not-divide', { least: step, nearest }));
  }
  // About two working lines go out from each pin, and a file takes no more of them than of pins.
  const most = Math.floor(MOST_PINS / 2 / pinsInRepeat(layout));
  if (recipe.repeats > most)
    return failed(
      countTrouble('repeats', recipe.repeats, 'too-many-pins', { least: 1, most, nearest: most }),
    );

  const zone = zoneOf(layout, cells, ground);
  for (let j = 0; j <= rows; j++) {
    for (let i = 0; i <= edgeAt(layout, j); i++) {
      if (zone(i, j) !== 'none' || cells.isCentre(i, j))
        drafting.pin(pinAt(layout, i, j), placeAt(layout, i, j));
    }
  }
  drawLines(drafting, layout, cells, ground, zone);
  return done(null);
}

const pinsInRepeat = (layout: Layout): number => {
  let places = 0;
  for (let j = 0; j < layout.period; j++) places += edgeAt(layout, j) / 2 + 1;
  return places;
};

/** What stands at a place: nothing, a pin as in plain ground, or one of the chosen ground. */
type Zone = 'none' | 'plain' | 'ground';

function zoneOf(layout: Layout, cells: Cells, ground: Ground): (i: number, j: number) => Zone {
  const { columns, rows } = ground;
  const standing = new Set(ground.pins.map(({ i, j }) => j * columns + i));
  return (i, j) => {
    if ((i + j) % 2 !== 0 || cells.isHeld(i, j)) return 'none';
    if (ground.plain || i < SEAM || i > edgeAt(layout, j) - SEAM || cells.isOutline(i, j)) return 'plain';
    return standing.has((j % rows) * columns + (i % columns)) ? 'ground' : 'none';
  };
}

/** Columns of plain ground beside each edge, on which any ground can begin. */
const SEAM = 2;

function drawLines(
  drafting: Drafting,
  layout: Layout,
  cells: Cells,
  ground: Ground,
  zone: (i: number, j: number) => Zone,
): void {
  const { rows } = layout;
  const stepsFrom = new Map<number, [number, number][]>();
  for (const { from, to, across, down } of ground.lines) {
    const [a, b] = [ground.pins[from]!, ground.pins[to]!];
    const key = a.j * ground.columns + a.i;
    const step: [number, number] = [across * ground.columns + b.i - a.i, down * ground.rows + b.j - a.j];
    stepsFrom.set(key, [...(stepsFrom.get(key) ?? []), step]);
  }
  const isStanding = (i: number, j: number) =>
    i >= 0 && j >= 0 && j <= rows && i <= edgeAt(layout, j) && zone(i, j) !== 'none';
  const join = (i: number, j: number, across: number, down: number): void => {
    const [p, q] = [i + across, j + down];
    if (!isStanding(p, q) || cells.isHeld(i + across / 2, j + down / 2)) return;
    const [from, to] = [pinAt(layout, i, j), pinAt(layout, p, q)];
    drafting.mark({ id: `${from}-${to}`, kind: 'line', from: { pin: from }, to: { pin: to } });
  };
  for (let j = 0; j <= rows; j++) {
    for (let i = j % 2; i <= edgeAt(layout, j); i += 2) {
      const here = zone(i, j);
      if (here === 'none') continue;
      for (const [across, down] of PLAIN_STEPS) {
        const isPlainLine =
          ground.plain ||
          here === 'plain' ||
          (isStanding(i + across, j + down) && zone(i + across, j + down) === 'plain');
        if (isPlainLine) join(i, j, across, down);
      }
      if (here !== 'ground' || ground.plain) continue;
      const key = (j % ground.rows) * ground.columns + (i % ground.columns);
      for (const [across, down] of stepsFrom.get(key) ?? []) {
        const isPlainLine = down === 1 && Math.abs(across) === 1;
        const [p, q] = [i + across, j + down];
        if (!isPlainLine || (isStanding(p, q) && zone(p, q) === 'ground')) join(i, j, across, down);
      }
    }
  }
}

const PLAIN_STEPS = [
  [-1, 1],
  [1, 1],
] as const;
