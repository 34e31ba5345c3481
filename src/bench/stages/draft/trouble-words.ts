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

/** The figure that stands in the way, and the nearest that works; null where no single figure does. */
export interface FigureInTheWay {
  readonly path: string;
  readonly nearest: number | null;
  readonly unit: 'mm' | 'degrees' | null;
}

export function figureInTheWay(trouble: TrialTrouble | null): FigureInTheWay | null {
  if (trouble?.kind === 'bad-figure') return { path: trouble.figure, nearest: null, unit: null };
  if (trouble?.kind !== 'recipe-figure') return null;
  const { figure, nearest, unit } = trouble;
  return {
    path: figure,
    nearest: nearest ?? null,
    unit: unit === 'mm' || unit === 'degrees' ? unit : null,
  };
}
