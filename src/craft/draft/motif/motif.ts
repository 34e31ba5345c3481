import { done, failed, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { MotifRecipe } from '#pattern/recipe/motif.ts';
import { Drafting } from '../drafting.ts';
import type { DraftTrouble } from '../trouble.ts';
import { fillMotif } from './filling.ts';
import { fitMotifs } from './fit.ts';
import { figure, frameOf } from './frame.ts';
import { drawFootsides, drawGround } from './ground.ts';
import { drawOutline, type Outline } from './outline.ts';
import { roomiest } from './roomiest.ts';

/** Motifs in a ground; see `#pattern/recipe/motif.ts` for how it lies. */
export function draftMotif(recipe: MotifRecipe): Result<Pattern, DraftTrouble> {
  const framed = frameOf(recipe);
  if (!framed.ok) return framed;
  const frame = framed.value;
  const fitted = fitMotifs(recipe, frame);
  if (!fitted.ok) return fitted;
  const motifs = fitted.value;
  const { clearance, step } = frame;
  const drafting = new Drafting();
  const outlines: Outline[][] = [];
  for (const [k, motif] of recipe.motifs.entries()) {
    outlines.push([]);
    for (let repeat = 0; repeat < recipe.repeats; repeat++) {
      const name = `m${k + 1}.${repeat + 1}`;
      const outline = drawOutline(drafting, motif, motifs[k]!, name, { x: 0, y: repeat * step });
      outlines[k]!.push(outline);
      if (motif.filling?.kind !== 'ground') continue;
      const place = { name: `m${k + 1}`, repeat, outline };
      const { ground } = motif.filling;
      if (fillMotif(drafting, ground, motifs[k]!, frame, place) > 0) continue;
      const most = roomiest(ground, motifs[k]!, frame);
      const limits = most === null ? {} : { most, nearest: most };
      return failed(figure('clearance', clearance, 'mm', 'leaves-no-ground', limits));
    }
  }
  drawGround(drafting, recipe, frame, motifs, (k, repeat) => outlines[k]![repeat]!);
  drawFootsides(drafting, recipe, frame);
  const { spacing, repeats } = recipe;
  return done(
    drafting.pattern({
      sizes: { footsideSpacing: spacing },
      ...(repeats > 1 && { repeat: { step: { x: 0, y: step }, count: repeats } }),
    }),
  );
}
