import type { Drafting } from '../drafting.ts';
import { gimpRound } from '../strip/gimp.ts';
import { type Cells, type Laid, laidPlace } from './cells.ts';
import { type FrameLayout, pinAt, placeAt } from './layout.ts';
import type { Lines } from './lines.ts';

/** Areas with every pin of their outline, since a mitre may bend one; gimps; and the legs of spiders. */
export function draftAreas(drafting: Drafting, layout: FrameLayout, { laid }: Cells, lines: Lines): void {
  for (const one of laid) {
    const { area, shape, side, id } = one;
    const outline = shape.outline.map((place) => pinAt(layout, side, laidPlace(one, place)));
    if (area.shape === 'spider') {
      drawLegs(layout, one, lines);
      continue;
    }
    const { stitch, tint, gimp } = area;
    drafting.area({ id, outline: outline.map((pin) => ({ pin })), stitch, ...(tint && { tint }) });
    if (!gimp) continue;
    drafting.mark({
      id: `${id}g`,
      kind: 'gimp',
      path: gimpRound(shape.corners).map((place) => placeAt(layout, side, laidPlace(one, place))),
      closed: true,
      width: GIMP * layout.recipe.spacing,
    });
  }
}

/** Legs to every pin round a spider on a side but those beside it; across a mitre there is no beside, and all have one. */
function drawLegs(layout: FrameLayout, one: Laid, lines: Lines): void {
  const { area, shape, side } = one;
  const centre = pinAt(layout, side, laidPlace(one, [area.column, area.row]));
  const isAcross = area.column + area.row + one.down === 0 && side.before !== null;
  for (const place of shape.outline) {
    if (isAcross || place[1] !== area.row) lines.draw(centre, pinAt(layout, side, laidPlace(one, place)));
  }
}

/** Thickness of a gimp as drawn, as a share of the footside spacing. Common practice, no source. */
const GIMP = 0.14;
