import { type Box, boxOf, growBox } from '#base/geometry/box.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { motifGuides } from '#craft/draft/guides/of-motif.ts';
import type { MotifRecipe } from '#pattern/recipe/motif.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';

/** Radii of a new motif, in footside spacings. */
const RADII = [2.5, 1.5, 1, 0.7];
const KNOTS = 8;
/** So many steps along an outline are taken as one: whether a motif really fits, drafting sees. */
const EVERY = 6;

/** A round motif of cloth as near to a place as it lies clear of the others, and of the edges; smaller where it must. */
export function motifWishes(recipe: MotifRecipe, place: Point): readonly Recipe[] {
  const { spacing } = recipe;
  const wishes = RADII.flatMap((share) => {
    const at = nearestClear(recipe, place, share * spacing);
    return at ? [withMotif(recipe, at, share * spacing)] : [];
  });
  // Where there is no room at all, drafting says what is in the way.
  return wishes.length > 0 ? wishes : [withMotif(recipe, inFirst(recipe, place), RADII.at(-1)! * spacing)];
}

const holds = ({ left, top, right, bottom }: Box, { x, y }: Point): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

function withMotif(recipe: MotifRecipe, { x, y }: Point, radius: number): Recipe {
  const outline = Array.from({ length: KNOTS }, (_, k) => {
    const angle = (2 * Math.PI * k) / KNOTS;
    return { x: round(radius * Math.sin(angle)), y: round(-radius * Math.cos(angle)) };
  });
  const motif = {
    at: { x: round(x), y: round(y) },
    turn: 0,
    mirrored: false,
    outline,
    filling: { kind: 'stitch', stitch: 'cloth' } as const,
    gimp: true,
  };
  return { ...recipe, motifs: [...recipe.motifs, motif] };
}

function nearestClear(recipe: MotifRecipe, wanted: Point, radius: number): Point | null {
  const { width, spacing } = recipe;
  const long = recipe.length * spacing;
  const place = inFirst(recipe, wanted);
  const others = recipe.motifs.map((_, at) => {
    const outline = motifGuides(recipe, at)[0]!.line.filter((_, spot) => spot % EVERY === 0);
    return { outline, box: boxOf(outline) };
  });
  const air = spacing;
  const edge = radius + air;
  const isClear = (at: Point) =>
    at.x >= edge &&
    at.x <= width - edge &&
    at.y >= edge &&
    at.y <= long - edge &&
    others.every(
      ({ outline, box }) =>
        !holds(growBox(box, edge), at) ||
        (!isInside(outline, at) && outline.every((spot) => distance(spot, at) >= edge)),
    );
  const places = [place];
  for (let x = edge; x <= width - edge; x += spacing) {
    for (let y = edge; y <= long - edge; y += spacing) places.push({ x, y });
  }
  places.sort((one, other) => distance(one, place) - distance(other, place));
  return places.find(isClear) ?? null;
}

/** A place in a later repeat stands for the same one in the first. */
function inFirst(recipe: MotifRecipe, { x, y }: Point): Point {
  const long = recipe.length * recipe.spacing;
  return { x, y: ((y % long) + long) % long };
}

const round = (mm: number): number => Number(mm.toFixed(3)) + 0;
