import { PointIndex } from '#base/geometry/point-index.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { FrameRecipe } from '#pattern/recipe/frame.ts';
import { Drafting } from '../drafting.ts';
import { countTrouble } from '../strip/figure.ts';
import type { DraftTrouble } from '../trouble.ts';
import { draftAreas } from './areas.ts';
import { cellsOf } from './cells.ts';
import { draftFootsides, draftHeadside } from './edges.ts';
import { draftGround } from './ground.ts';
import { type FrameLayout, frameLayoutOf } from './layout.ts';
import { Lines } from './lines.ts';

/**
 * An edging with its corners: one of them with what lies beside it, or the whole frame of four. A square frame is its
 * own image under a quarter turn, any other under a half turn; see `mitre.ts` for the ground at a corner.
 */
export function draftFrame(recipe: FrameRecipe): Result<Pattern, DraftTrouble> {
  const layout = frameLayoutOf(recipe);
  if (!layout.ok) return layout;
  const cells = cellsOf(layout.value);
  if (!cells.ok) return cells;
  const drafting = new Drafting();
  const lines = new Lines(drafting);
  draftGround(drafting, layout.value, cells.value, lines);
  draftFootsides(drafting, layout.value, lines);
  draftHeadside(drafting, layout.value, lines);
  draftAreas(drafting, layout.value, cells.value, lines);
  const pattern = drafting.pattern({ sizes: { footsideSpacing: recipe.spacing } });
  const trouble = crowded(layout.value, pattern);
  return trouble ? failed(trouble) : done(pattern);
}

/** Pressed ground at a corner can bring an arc's pins too near to each other or to the ground. */
function crowded({ strip, recipe: { headside } }: FrameLayout, { pins }: Pattern): DraftTrouble | null {
  if (!('pins' in headside)) return null;
  const index = new PointIndex(pins);
  const least = pins.reduce(
    (now, { id }, at) => (id.includes('h') ? index.nearestTo(at, now) : now),
    strip.clearance,
  );
  if (least >= strip.clearance - 1e-9) return null;
  const nearest = Math.floor(((headside.pins - 1) * least) / strip.clearance) + 1;
  return countTrouble(
    'headside.pins',
    headside.pins,
    'pins-too-close',
    nearest < 3 ? {} : { most: nearest, nearest },
  );
}
