import { distance } from '#base/geometry/point.ts';
import { done, type Result } from '#base/result.ts';
import type { Pattern, Run } from '#pattern/pattern.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import { Drafting } from '../drafting.ts';
import type { DraftTrouble } from '../trouble.ts';
import { draftAreas } from './areas.ts';
import { cellsOf } from './cells.ts';
import { draftGround, pinAt } from './ground.ts';
import { draftArcs, line, rimOf } from './headside.ts';
import { type Layout, layoutOf } from './layout.ts';

/**
 * An edging or insertion on a lattice; see `#pattern/recipe/strip.ts` for how it lies. The last row of a repeat is the
 * first of the next, so that the strip ends as it begins.
 */
export function draftStrip(recipe: StripRecipe): Result<Pattern, DraftTrouble> {
  const layout = layoutOf(recipe);
  if (!layout.ok) return layout;
  const cells = cellsOf(layout.value);
  if (!cells.ok) return cells;
  const drafting = new Drafting();
  const ground = draftGround(drafting, layout.value, cells.value);
  if (!ground.ok) return ground;
  const { headside } = layout.value.recipe;
  const { length, repeats, spacing } = recipe;
  draftEdge(drafting, footside(layout.value, 0, 'footside'));
  if (headside.kind === 'fans' || headside.kind === 'scallops') {
    const arcs = draftArcs(drafting, layout.value, headside);
    if (!arcs.ok) return arcs;
  } else if (headside.kind === 'footside') {
    draftEdge(drafting, footside(layout.value, recipe.width, 'footside-right'));
  } else draftEdge(drafting, rim(drafting, layout.value));
  draftAreas(drafting, layout.value);
  return done(
    drafting.pattern({
      sizes: { footsideSpacing: spacing },
      repeat: { step: { x: 0, y: length * spacing }, count: repeats },
    }),
  );
}

function draftEdge(drafting: Drafting, run: Run): void {
  if (run.pins.length < 2) return;
  drafting.run(run);
  const places = run.pins.map((pin) => drafting.placeOf(pin));
  // Aslant, the edge of points is a line of the ground, which is drawn already.
  for (let k = 1; k < places.length; k++)
    if (places[k]!.x === places[k - 1]!.x) line(drafting, run.pins[k - 1]!, run.pins[k]!);
}

function footside(layout: Layout, column: number, id: string): Run {
  const pins: string[] = [];
  for (let j = column % 2; j <= layout.rows; j += 2) pins.push(pinAt(layout, column, j));
  return { id, pins, shape: 'line', closed: false, role: 'footside', even: true };
}

/** The edge of the ground itself: a straight headside, or points. */
function rim(drafting: Drafting, layout: Layout): Run {
  const pins = rimOf(layout, 0, layout.rows);
  const places = pins.map((pin) => drafting.placeOf(pin));
  const steps = places.slice(1).map((place, k) => distance(place, places[k]!));
  const even = Math.max(...steps) - Math.min(...steps) < 1e-9;
  const shape = layout.recipe.headside.kind === 'straight' ? 'line' : 'curve';
  return { id: 'headside', pins, shape, closed: false, role: 'headside', even };
}
