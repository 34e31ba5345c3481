import type { Page } from 'playwright-core';
import { draftRecipe } from '#jobs/draft/draft.ts';
import { libraryRecipe } from '#jobs/draft/source.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** Chooses a recipe of the library, and waits until its figures are there. */
export async function fromRecipe(page: Page, title: RegExp): Promise<void> {
  await page.getByRole('link', { name: 'From a recipe' }).click();
  await page.getByRole('button', { name: title }).click();
  await page.getByRole('heading', { level: 2, name: 'Draft' }).waitFor();
  await page.getByText('Change a figure').waitFor();
}

/** What the command drafts of a recipe of the library with figures set. */
export function commanded(name: string, sets: Readonly<Record<string, string>>): Pattern {
  const job = draftRecipe(
    libraryRecipe(name)!,
    Object.entries(sets).map(([path, text]) => ({ path, text })),
  );
  if (!job.ok) throw new Error(job.trouble.kind);
  return job.value.file.pattern;
}

/** What the command drafts of the recipe that a pattern keeps. */
export function draftedAnew({ recipe }: Pattern): Pattern {
  const job = draftRecipe({ from: 'recipe', recipe: recipe!, about: {} }, []);
  if (!job.ok) throw new Error(job.trouble.kind);
  return job.value.file.pattern;
}

/** Places of pins by their ids, to the 0.001 mm that a file carries. */
export const pinPlaces = ({ pins }: Pattern): readonly (readonly [string, number, number])[] =>
  pins.map(({ id, x, y }) => [id, Number(x.toFixed(3)) + 0, Number(y.toFixed(3)) + 0]);
