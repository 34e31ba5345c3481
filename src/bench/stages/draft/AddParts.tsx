import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Drafted } from '#craft/draft/redraft.ts';
import { additions, countOf, type GrowingList, growingLists } from '#jobs/draft/additions.ts';
import type { DraftJob } from '#jobs/draft/draft.ts';
import { figureName } from '#jobs/words/figure-names.ts';
import { useDesignState } from '../../document/use-design.ts';
import { useLate } from '../../parts/use-late.ts';
import { useSheet } from '../../sheet/handle.ts';
import type { Trial } from './use-trial.ts';

const ONE_MORE: Readonly<Record<GrowingList, string>> = {
  tapes: 'Add a tape',
  plaits: 'Add a plait',
  leaves: 'Add a leaf',
  joins: 'Add a join',
  motifs: 'Add a motif',
  rounds: 'Add a round',
};

/** One more of what the recipe has several of, each in one step. */
export function AddParts({
  pattern,
  trial,
  onAdded,
}: {
  readonly pattern: Drafted;
  readonly trial: Trial;
  readonly onAdded: (path: string, words: string, job: DraftJob) => void;
}) {
  const sheet = useSheet();
  const { editable } = useDesignState();
  const [isBusy, setBusy] = useState(false);
  const isLate = useLate(isBusy);
  const { recipe, pins } = pattern;
  const lists = growingLists(recipe);
  if (lists.length === 0 || !editable) return null;
  const isTrying = trial.isChanged && !trial.isPassing;

  const add = async (list: GrowingList) => {
    const path = `${list}.${countOf(recipe, list)}`;
    const words = `Added ${figureName(path).toLowerCase()}`;
    setBusy(true);
    const kept = await trial.become(additions(recipe, list, sheet.cursor(), pins), words);
    setBusy(false);
    if (kept) onAdded(path, words, kept.job);
  };
  return (
    <section className="guides" aria-label="Add">
      <div className="buttons">
        {lists.map((list) => (
          <Button
            key={list}
            className="button"
            isDisabled={isTrying || isBusy}
            onPress={() => void add(list)}
          >
            {ONE_MORE[list]}
          </Button>
        ))}
      </div>
      <small>
        {isTrying
          ? 'Keep what you are trying, or leave it, before you add to the lace.'
          : recipe.kind === 'mat'
            ? 'A new round lies between the others and the outermost.'
            : 'It is put in the middle of what you see, or as near to it as it fits. Then move its points.'}
      </small>
      {isLate && (
        <div className="working">
          <p>Looking for where it fits …</p>
          <Button className="button quiet" onPress={trial.leave}>
            Stop
          </Button>
        </div>
      )}
    </section>
  );
}
