import { useEffect, useMemo, useRef, useState } from 'react';
import { failed, type Result } from '#base/result.ts';
import type { Drafted } from '#craft/draft/redraft.ts';
import type { DraftJob } from '#jobs/draft/draft.ts';
import { withFigures } from '#jobs/draft/set.ts';
import type { Trouble } from '#jobs/trouble.ts';
import { sameValue } from '#pattern/equal.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import { useWork } from '../../document/use-design.ts';
import { useSheet } from '../../sheet/handle.ts';
import { LatestJob } from '../../worker/latest-job.ts';

/** What is wrong with what is tried, or a fault of our own. */
export type TrialTrouble = Trouble | { readonly kind: 'broken' };

/** A recipe while its figures are being changed: drafted beside the page and shown on the sheet, and not yet kept. */
export interface Trial {
  /** As it is tried, or as the pattern has it. */
  readonly recipe: Recipe;
  readonly isChanged: boolean;
  readonly isBusy: boolean;
  /** What was drafted last of what is tried. */
  readonly made: DraftJob | null;
  /** Why what is tried cannot be drafted, or why a figure was not taken. */
  readonly trouble: TrialTrouble | null;
  /** Tries a figure as it was typed. */
  set(path: string, text: string): void;
  tryOut(recipe: Recipe): void;
  /** One step to what is shown. */
  keep(words: string): void;
  leave(): void;
  /** Drafts a recipe and keeps it at once as one step, where it can be drafted. */
  become(recipe: Recipe, words: string): Promise<DraftJob | null>;
}

interface State {
  readonly recipe: Recipe | null;
  readonly made: DraftJob | null;
  readonly trouble: TrialTrouble | null;
  readonly isBusy: boolean;
}

const REST: State = { recipe: null, made: null, trouble: null, isBusy: false };
const NO_PICTURES: ReadonlyMap<string, Uint8Array> = new Map();

export function useTrial(pattern: Drafted): Trial {
  const { design } = useWork();
  const sheet = useSheet();
  const drafter = useMemo(() => new LatestJob('draft'), []);
  const [state, setState] = useState(REST);
  const tried = useRef<Recipe | null>(null);
  const { recipe, made, trouble, isBusy } = state;

  const rest = (with_: Partial<State> = {}) => {
    drafter.stop();
    tried.current = null;
    setState({ ...REST, ...with_ });
  };
  useEffect(() => () => drafter.stop(), [drafter]);
  // Another step, such as Undo, ends what is tried: it was tried on a pattern that is no longer there.
  // biome-ignore lint/correctness/useExhaustiveDependencies: begins anew with each pattern.
  useEffect(() => rest(), [pattern]);
  const preview = made?.file.pattern ?? null;
  useEffect(() => sheet.setDress({ instead: preview }), [sheet, preview]);
  useEffect(() => () => sheet.setDress({}), [sheet]);

  async function draft(wish: Recipe): Promise<Result<DraftJob, TrialTrouble> | null> {
    if (sameValue(wish, pattern.recipe)) {
      rest();
      return null;
    }
    tried.current = wish;
    setState((before) => ({ ...before, recipe: wish, isBusy: true }));
    const job = await drafter
      .ask({ from: 'pattern', recipe: wish, pattern, pictures: NO_PICTURES })
      .catch(() => failed(BROKEN));
    if (!job) return null;
    setState((before) => ({
      ...before,
      ...(job.ok ? { made: job.value, trouble: null } : { trouble: job.trouble }),
      isBusy: false,
    }));
    return job;
  }

  return {
    recipe: recipe ?? pattern.recipe,
    isChanged: recipe !== null,
    made,
    trouble,
    isBusy,
    set(path, text) {
      const set = withFigures(tried.current ?? pattern.recipe, [{ path, text }]);
      if (set.ok) void draft(set.value);
      else setState((before) => ({ ...before, trouble: set.trouble }));
    },
    tryOut: (wish) => void draft(wish),
    keep(words) {
      if (made) design.become(made.file.pattern, words);
    },
    leave: () => rest(),
    async become(wish, words) {
      const job = await draft(wish);
      if (job?.ok) design.become(job.value.file.pattern, words);
      else if (job) rest({ trouble: job.trouble });
      return job?.ok ? job.value : null;
    },
  };
}

const BROKEN = { kind: 'broken' } as const;
