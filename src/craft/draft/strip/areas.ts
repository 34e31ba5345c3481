import type { Anchor } from '#pattern/pattern.ts';
import type { StripArea } from '#pattern/recipe/strip-area.ts';
import type { Drafting } from '../drafting.ts';
import { type ClippedPath, clippedPath, clippedPolygon } from './clip.ts';
import { gimpPath, gimpRound } from './gimp.ts';
import { pinAt } from './ground.ts';
import { type Layout, placeAt } from './layout.ts';
import { type Place, shapeOf } from './shape.ts';
import { type Trail, trailCourse, trailUnit, trailWidth } from './trail.ts';

/** Areas, gimps and the legs of spiders in every repeat; what reaches over the ends of the strip is cut off there. */
export function draftAreas(drafting: Drafting, layout: Layout): void {
  layout.recipe.areas.forEach((area, k) => {
    if (area.shape === 'trail') draftTrail(drafting, layout, area, `a${k}`);
    else draftShape(drafting, layout, area, `a${k}`);
  });
}

function draftShape(drafting: Drafting, layout: Layout, area: Exclude<StripArea, Trail>, name: string): void {
  const { period, rows } = layout;
  const { corners, outline, rows: span } = shapeOf(area);
  // From the repeat in which its lowest row is the first on the strip to that in which its uppermost is the last.
  const first = Math.ceil((1 - span[1]) / period);
  const last = Math.floor((rows - 1 - span[0]) / period);
  for (let repeat = first; repeat <= last; repeat++) {
    const moved = (places: readonly Place[]): Place[] => places.map(([i, j]) => [i, j + repeat * period]);
    // The first repeat may show the lower part of an area that belongs to the one before.
    const id = `${name}.${repeat - first}`;
    if (area.shape === 'spider') {
      draftLegs(drafting, layout, [area.column, area.row + repeat * period], moved(outline));
      continue;
    }
    const cut = clippedPolygon(moved(corners), rows);
    drafting.area({
      id,
      outline: cut.map((place) => pinAnchor(layout, place)),
      stitch: area.stitch,
      ...(area.tint && { tint: area.tint }),
    });
    if (area.gimp) drawGimp(drafting, layout, `${id}g`, moved(gimpRound(corners)), true);
  }
}

/** Legs to every pin round a spider but those beside it: they come from above and leave below. */
function draftLegs(drafting: Drafting, layout: Layout, [i, j]: Place, outline: readonly Place[]): void {
  if (j < 0 || j > layout.rows) return;
  const centre = pinAt(layout, i, j);
  for (const [p, q] of outline) {
    if (q === j || q < 0 || q > layout.rows) continue;
    const pin = pinAt(layout, p, q);
    drafting.mark({ id: `${centre}-${pin}`, kind: 'line', from: { pin: centre }, to: { pin } });
  }
}

function draftTrail(drafting: Drafting, layout: Layout, trail: Trail, name: string): void {
  const { period, recipe, rows } = layout;
  const unit = trailUnit(trail, period);
  const right = ([i, j]: Place): Place => [i + trailWidth(trail), j];
  for (let repeat = 0; repeat < recipe.repeats; repeat++) {
    const left = trailCourse(trail, unit, repeat * period, (repeat + 1) * period);
    const outline = [...left.map(right), ...left.toReversed()];
    drafting.area({
      id: `${name}.${repeat}`,
      outline: outline.map((place) => pinAnchor(layout, place)),
      stitch: trail.stitch,
      ...(trail.tint && { tint: trail.tint }),
    });
  }
  if (!trail.gimp) return;
  // A column beside each edge is half way to the next pins of the ground.
  const course = trailCourse(trail, unit, 0, rows);
  const sides = {
    l: course.map(([i, j]): Place => [i - 1, j]),
    r: course.map(right).map(([i, j]): Place => [i + 1, j]),
  };
  for (const [side, path] of Object.entries(sides))
    drawGimp(drafting, layout, `${name}${side}g`, gimpPath(path), false);
}

function drawGimp(
  drafting: Drafting,
  layout: Layout,
  id: string,
  path: readonly Place[],
  closed: boolean,
): void {
  const parts = clippedPath(path, layout.rows, closed).flatMap(inPieces);
  parts.forEach((part, k) => {
    drafting.mark({
      id: k === 0 ? id : `${id}.${k}`,
      kind: 'gimp',
      path: part.path.map(([i, j]) => placeAt(layout, i, j)),
      closed: part.closed,
      width: GIMP * layout.recipe.spacing,
    });
  });
}

/** A way as long as a file carries stays whole; a longer one goes on in the next piece from the place where it ends. */
function inPieces(part: ClippedPath): ClippedPath[] {
  if (part.path.length <= LONGEST) return [part];
  const pieces = Math.ceil((part.path.length - 1) / (LONGEST - 1));
  return Array.from({ length: pieces }, (_, k) => ({
    path: part.path.slice(k * (LONGEST - 1), (k + 1) * (LONGEST - 1) + 1),
    closed: false,
  }));
}

/** Places in one way: fewer than `MAX_PATH` of a pattern file. */
const LONGEST = 20_000;

/** Thickness of a gimp as drawn, as a share of the footside spacing. Common practice, no source. */
const GIMP = 0.14;

const pinAnchor = (layout: Layout, [i, j]: Place): Anchor => ({ pin: pinAt(layout, i, j) });
