import { figureTroubleInWords } from '#jobs/words/draft.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import { troubleInWords } from '#jobs/words/trouble.ts';
import type { TrialTrouble } from './use-trial.ts';

/** Why nothing is drafted, with the figure called as it is called on the screen. */
export function trialTroubleInWords(trouble: TrialTrouble): string {
  switch (trouble.kind) {
    case 'broken':
      return 'The drafting broke off, by a fault of ours. Nothing was changed. Try once more.';
    case 'recipe-figure':
    case 'bad-figure':
    case 'missing-figure':
    case 'unknown-figure':
      return figureTroubleInWords(trouble, (path) => `“${figureName(path)}”`);
    default:
      return troubleInWords(trouble);
  }
}

/** The figure that stands in the way, and what it can be instead; null where no single figure does. */
export function figureInTheWay(
  trouble: TrialTrouble | null,
): { readonly path: string; readonly nearest: number | null } | null {
  if (trouble?.kind === 'recipe-figure') return { path: trouble.figure, nearest: trouble.nearest ?? null };
  return trouble?.kind === 'bad-figure' ? { path: trouble.figure, nearest: null } : null;
}
