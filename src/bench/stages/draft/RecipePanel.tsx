import { useEffect, useRef, useState } from 'react';
import type { LostEdit } from '#craft/draft/redraft/list.ts';
import type { Drafted } from '#craft/draft/redraft.ts';
import type { DraftJob } from '#jobs/draft/draft.ts';
import { withPart } from '#jobs/draft/parts.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import type { RecipeKind } from '#pattern/recipe/recipe.ts';
import { announce } from '../../parts/announce.ts';
import { AddParts } from './AddParts.tsx';
import { Figures } from './Figures.tsx';
import { Guides, type WantedPart } from './guides/Guides.tsx';
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

export function RecipePanel({
  pattern,
  onTrying,
}: {
  readonly pattern: Drafted;
  /** Told whether figures are being tried that are not kept. */
  readonly onTrying: (isTrying: boolean) => void;
}) {
  const trial = useTrial(pattern);
  const isTrying = trial.isChanged && !trial.isPassing;
  useEffect(() => {
    onTrying(isTrying);
    return () => onTrying(false);
  }, [isTrying, onTrying]);
  const start = useRef<HTMLParagraphElement>(null);
  const [lost, setLost] = useState<readonly LostEdit[]>([]);
  const [wanted, setWanted] = useState<WantedPart>({ path: null });
  const added = (path: string | null, words: string, job: DraftJob) => {
    announce(`${words}.`);
    setLost(job.lost);
    setWanted({ path });
  };
  const remove = (path: string) => {
    const recipe = withPart(trial.recipe, path, null);
    if (!recipe) return;
    if (isTrying) return trial.tryOut(recipe);
    const words = `Removed ${figureName(path).toLowerCase()}`;
    void trial.become([recipe], words).then((kept) => {
      if (!kept) return;
      added(null, words, kept.job);
      // The button that was pressed is no longer there.
      start.current?.focus();
    });
  };
  const keep = async () => {
    const made = await trial.keep(keepWords(pattern.recipe, trial.recipe));
    if (!made) return;
    setLost(made.lost);
    announce('Kept. Undo takes it back.');
  };
  return (
    <>
      <p ref={start} tabIndex={-1}>
        {MAKES[pattern.recipe.kind]} Change a figure, and the sheet shows what comes of it.
      </p>
      <TrialBar trial={trial} onKeep={keep} />
      {!trial.isChanged && <LostEdits lost={lost} />}
      <AddParts pattern={pattern} trial={trial} onAdded={added} />
      <Guides pattern={pattern} trial={trial} wanted={wanted} onKept={(job) => setLost(job.lost)} />
      <Figures
        trial={trial}
        recipe={trial.isPassing ? pattern.recipe : trial.recipe}
        wanted={wanted}
        onRemove={remove}
        troubled={figureInTheWay(trial.trouble)?.path ?? null}
      />
    </>
  );
}
