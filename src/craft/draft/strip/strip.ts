import { done, type Result } from '#base/result.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import { Drafting } from '../drafting.ts';
import { groundLattice, latticePlace } from '../lattice.ts';
import type { DraftTrouble } from '../trouble.ts';

/** An edging or insertion on a lattice; see `#pattern/recipe/strip.ts` for how it lies. */
export function draftStrip(recipe: StripRecipe): Result<Pattern, DraftTrouble> {
  const { spacing, angle, width, repeats } = recipe;
  const lattice = groundLattice(spacing, angle);
  const rows = 2 * recipe.length * repeats;
  const drafting = new Drafting();
  for (let j = 0; j <= rows; j++) {
    for (let i = j % 2; i <= width; i += 2) drafting.pin(`g${i}.${j}`, latticePlace(lattice, i, j));
  }
  const footside = Array.from({ length: rows / 2 + 1 }, (_, k) => `g0.${2 * k}`);
  drafting.run({
    id: 'footside',
    pins: footside,
    shape: 'line',
    closed: false,
    role: 'footside',
    even: true,
  });
  return done(
    drafting.pattern({
      sizes: { footsideSpacing: spacing },
      repeat: { step: { x: 0, y: recipe.length * spacing }, count: repeats },
    }),
  );
}
