import { useState } from 'react';
import type { LostEdit } from '#craft/draft/redraft/list.ts';
import type { Drafted } from '#craft/draft/redraft.ts';
import type { RecipeKind } from '#pattern/recipe/recipe.ts';
import { announce } from '../../parts/announce.ts';
import { Figures } from './Figures.tsx';
import { Guides } from './guides/Guides.tsx';
import { keepWords } from './keep-words.ts';
import { LostEdits } from './LostEdits.tsx';
import { TrialBar } from './TrialBar.tsx';
import { figureInTheWay } from './trouble-words.ts';
import { useTrial } from './use-trial.ts';

/** What each kind of recipe makes. */
const MAKES: Readonly<Record<RecipeKind, string>> = {
  strip: 'A strip: an edging or insertion on a lattice.',
  frame: 'A strip with corners.',
  ring: 'A strip bent to a ring, or a part of one.',
  mat: 'A round mat, from the centre outward.',
  tape: 'Tapes along drawn curves.',
  motif: 'Motifs in a ground.',
};

export function RecipePanel({ pattern }: { readonly pattern: Drafted }) {
  const trial = useTrial(pattern);
  const [lost, setLost] = useState<readonly LostEdit[]>([]);
  const keep = async () => {
    const made = await trial.keep(keepWords(pattern.recipe, trial.recipe));
    if (!made) return;
    setLost(made.lost);
    announce('Kept. Undo takes it back.');
  };
  return (
    <>
      <p>{MAKES[pattern.recipe.kind]} Change a figure, and the sheet shows what comes of it.</p>
      <TrialBar trial={trial} onKeep={keep} />
      {!trial.isChanged && <LostEdits lost={lost} />}
      <Guides pattern={pattern} trial={trial} onKept={(job) => setLost(job.lost)} />
      <Figures
        trial={trial}
        recipe={trial.isPassing ? pattern.recipe : trial.recipe}
        troubled={figureInTheWay(trial.trouble)?.path ?? null}
      />
    </>
  );
}
