import { useEffect, useMemo, useRef, useState } from 'react';
import { failed, type Result } from '#base/result.ts';
import type { Drafted } from '#craft/draft/redraft.ts';
import type { DraftJob } from '#jobs/draft/draft.ts';
import { withFigures } from '#jobs/draft/set.ts';
import type { Trouble } from '#jobs/trouble.ts';
import { sameValue } from '#pattern/equal.ts';
import type { Pattern } from '#pattern/pattern.ts';
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
  /** Whether it is shown for as long as a gesture lasts. */
  readonly isPassing: boolean;
  /** What was drafted last of what is tried. */
  readonly made: DraftJob | null;
  /** Why what is tried cannot be drafted, or why a figure was not taken. */
  readonly trouble: TrialTrouble | null;
  /** Tries a figure as it was typed. */
  set(path: string, text: string): void;
  /** Shows what a recipe makes. */
  tryOut(recipe: Recipe, options?: TryOptions): void;
  /** One step to what is tried; null where it cannot be drafted after all. */
  keep(words: string): Promise<DraftJob | null>;
  leave(): void;
  /** Keeps the first of some recipes that can be drafted, at once and as one step; null where none can. */
  become(wishes: readonly Recipe[], words: string): Promise<Kept | null>;
  /** Shows a pattern for as long as a drag lasts; for null what is tried. */
  show(passing: Pattern | null): void;
}

export interface Kept {
  readonly job: DraftJob;
  /** Why another was kept than the first; null where it is the first. */
  readonly refused: TrialTrouble | null;
}

export interface TryOptions {
  /** Whether it lasts as long as a gesture: nobody is asked whether to keep it. */
  readonly isPassing?: boolean;
  /** Path of a part that was just put in, and is made to fit. */
  readonly fresh?: string | null;
}

interface State {
  readonly recipe: Recipe | null;
  readonly made: DraftJob | null;
  readonly trouble: TrialTrouble | null;
  readonly isBusy: boolean;
  readonly isPassing: boolean;
}

const REST: State = { recipe: null, made: null, trouble: null, isBusy: false, isPassing: false };
const NO_PICTURES: ReadonlyMap<string, Uint8Array> = new Map();

export function useTrial(pattern: Drafted): Trial {
  const { design } = useWork();
  const sheet = useSheet();
  const drafter = useMemo(() => new LatestJob('draft'), []);
  const [state, setState] = useState(REST);
  const tried = useRef<Recipe | null>(null);
  const { recipe, made, trouble, isBusy, isPassing } = state;

  const rest = (with_: Partial<State> = {}) => {
    drafter.stop();
    tried.current = null;
    sheet.setDress({});
    setState({ ...REST, ...with_ });
  };
  useEffect(() => {
    drafter.warm();
    return () => drafter.close();
  }, [drafter]);
  // Another step, such as Undo, ends what is tried: it was tried on a pattern that is no longer there.
  // biome-ignore lint/correctness/useExhaustiveDependencies: begins anew with each pattern.
  useEffect(() => rest(), [pattern]);
  const preview = made?.file.pattern ?? null;
  useEffect(() => sheet.setDress({ instead: preview }), [sheet, preview]);
  useEffect(() => () => sheet.setDress({}), [sheet]);

  async function draft(
    wish: Recipe,
    { isPassing = false, fresh = null }: TryOptions = {},
  ): Promise<Result<DraftJob, TrialTrouble> | null> {
    if (sameValue(wish, pattern.recipe)) {
      rest();
      return null;
    }
    tried.current = wish;
    setState((before) => ({ ...before, recipe: wish, isBusy: true, isPassing }));
    const job = await drafter
      .ask({ from: 'pattern', recipe: wish, pattern, pictures: NO_PICTURES }, fresh)
      .catch(() => failed(BROKEN));
    if (!job) return null;
    // While a figure is being dragged what was drafted on the way is shown too; only the last of it can be kept.
    const isLast = tried.current === wish;
    const drafted = job.ok && isLast ? job.value.recipe : wish;
    if (isLast) tried.current = drafted;
    setState((before) => ({
      ...before,
      ...(job.ok && { made: job.value }),
      ...(isLast && { recipe: drafted }),
      ...(isLast && { trouble: job.ok ? null : job.trouble, isBusy: false }),
    }));
    return isLast ? job : null;
  }

  function kept(job: DraftJob, words: string): DraftJob {
    design.become(job.file.pattern, words);
    // Where the pattern is only looked at it has not changed, and what was tried goes all the same.
    rest();
    return job;
  }

  return {
    recipe: recipe ?? pattern.recipe,
    isChanged: recipe !== null,
    made,
    trouble,
    isBusy,
    isPassing,
    set(path, text) {
      const set = withFigures(tried.current ?? pattern.recipe, [{ path, text }]);
      if (set.ok) void draft(set.value);
      else setState((before) => ({ ...before, trouble: set.trouble }));
    },
    tryOut: (wish, options) => void draft(wish, options),
    async keep(words) {
      if (made && !isBusy) return kept(made, words);
      const job = await draft(recipe ?? pattern.recipe);
      return job?.ok ? kept(job.value, words) : null;
    },
    leave: () => rest(),
    async become(wishes, words) {
      let refused: TrialTrouble | null = null;
      for (const wish of wishes) {
        const job = await draft(wish, { isPassing: true });
        if (!job) return null;
        if (job.ok) return { job: kept(job.value, words), refused };
        refused ??= job.trouble;
      }
      rest({ trouble: refused });
      return null;
    },
    show: (passing) => sheet.setDress({ instead: passing ?? preview }),
  };
}

const BROKEN = { kind: 'broken' } as const;
