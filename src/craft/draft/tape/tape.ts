import { distance, type Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { TapeRecipe } from '#pattern/recipe/tape.ts';
import { Drafting } from '../drafting.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import { copyName, inCopy } from './again.ts';
import { type Band, bandOf } from './band.ts';
import { checkBends, checkSizes } from './bends.ts';
import { centreLines } from './centre-line.ts';
import { edgePins } from './edge-pins.ts';
import { layBand } from './lay-band.ts';
import { layLeaf } from './leaves.ts';
import { findOverlaps } from './overlaps.ts';
import { Placed } from './placed.ts';
import { layPlait } from './plaits.ts';
import { pinsToMeet } from './snap.ts';

/** Tapes along drawn curves with what ties them together; see `#pattern/recipe/tape.ts` for the figures. */
export function draftTape(recipe: TapeRecipe): Result<Pattern, DraftTrouble> {
  const bands = bandsOf(recipe);
  if (!bands.ok) return bands;
  const overlaps = findOverlaps(bands.value);
  if (!overlaps.ok) return overlaps;

  const drafting = new Drafting();
  const placed = new Placed(Math.max(JOIN_ROOM, ...recipe.tapes.map(({ spacing }) => spacing)));
  for (const [at, band] of bands.value.entries()) {
    const edges = edgePins(band, band.at);
    if (!edges.ok) return edges;
    layBand(drafting, placed, band, edges.value, ({ parameter, place }) =>
      overlaps.value.isCovered(at, parameter, place),
    );
  }
  overlaps.value.crossings.forEach(({ place }, k) => {
    drafting.mark({ id: `sew${k + 1}`, kind: 'text', at: place, text: 'sew', height: SEW_HEIGHT });
  });
  const tied = tie(recipe, drafting, placed);
  if (!tied.ok) return tied;

  const { again } = recipe;
  const foot = recipe.tapes.find(({ footside }) => footside !== undefined);
  return done(
    drafting.pattern({
      sizes: foot ? { footsideSpacing: foot.spacing } : {},
      ...(again?.kind === 'step' && { repeat: { step: again.step, count: again.count } }),
    }),
  );
}

/** Height of the word that tells of a crossing, mm. */
const SEW_HEIGHT = 2;

function bandsOf({ tapes, again }: TapeRecipe): Result<Band[], DraftTrouble> {
  const bands: Band[] = [];
  for (const [at, tape] of tapes.entries()) {
    const sizes = checkSizes(tape, at);
    if (!sizes.ok) return sizes;
    const lines = centreLines(tape, at, again);
    if (!lines.ok) return lines;
    for (const line of lines.value) {
      const bends = checkBends(line.curve, tape, at);
      if (!bends.ok) return bends;
      const band = bandOf(line, tape);
      if (!band.ok) return band;
      bands.push(band.value);
    }
  }
  return done(bands);
}

/** Joins, plaits and leaves, each as often as all comes again. A join at the centre of a turn is one pin. */
function tie(recipe: TapeRecipe, drafting: Drafting, placed: Placed): Result<null, DraftTrouble> {
  const { again, joins, plaits, leaves } = recipe;
  const copies = Array.from({ length: again?.count ?? 1 }, (_, copy) => copy);
  for (const [k, join] of joins.entries()) {
    for (const copy of copies) {
      const place = inCopy(again, copy, join);
      const near = placed.nearest(place, JOIN_ROOM);
      if (near === null) placed.add(drafting.pin(`j${k + 1}${copyName(again, copy)}`, place), place);
      else {
        const away = distance(drafting.placeOf(near), place);
        if (away > ONE_SPOT) return failed(inTheWay(k, away));
      }
    }
  }
  const pins = pinsToMeet(placed.pins(), reachOf(recipe));
  for (const copy of copies) {
    const moved = (place: Point): Point => inCopy(again, copy, place);
    for (const [k, leaf] of leaves.entries()) {
      const id = `leaf${k + 1}${copyName(again, copy)}`;
      const laid = layLeaf(drafting, pins, leaf, [moved(leaf.from), moved(leaf.to)], `leaves.${k}`, id);
      if (!laid.ok) return laid;
    }
    for (const [k, plait] of plaits.entries()) {
      const id = `p${k + 1}${copyName(again, copy)}`;
      const through = plait.through.map(moved);
      const laid = layPlait(drafting, placed, pins, plait, through, `plaits.${k}`, id);
      if (!laid.ok) return laid;
    }
  }
  return done(null);
}

/** A join nearer than this to a pin has no room; on one spot it is that pin. mm. */
const JOIN_ROOM = 2 * LEAST_SPACING;
const ONE_SPOT = 1e-6;

/** A named place means a pin no farther off than two spaces. */
const reachOf = ({ tapes }: TapeRecipe): number => 2 * Math.max(...tapes.map(({ spacing }) => spacing));

const inTheWay = (join: number, given: number): DraftTrouble => ({
  kind: 'recipe-figure',
  figure: `joins.${join}`,
  given,
  unit: 'mm',
  least: JOIN_ROOM,
  why: 'pins-too-close',
});
