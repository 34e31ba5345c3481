import { useEffect, useState } from 'react';
import type { SizeWish } from '#jobs/size/wish.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { SizeAnswer } from '../../worker/size-jobs.ts';
import type { JobState } from '../../worker/use-job.ts';
import { useJob } from '../../worker/use-job.ts';

/** Work that is done sooner is not spoken of, ms. */
const SOON = 500;

export interface Reckoned {
  readonly pattern: Pattern;
  readonly wish: SizeWish;
  readonly answer: SizeAnswer;
}

export interface SizingNow {
  /** The last that was reckoned, also while a newer wish is under way. */
  readonly last: Reckoned | null;
  readonly isNewest: boolean;
  readonly job: JobState<SizeAnswer>;
  /** Whether it takes so long that it should be spoken of. */
  readonly isLong: boolean;
  again(): void;
}

/** Reckons sizes beside the page, anew whenever the pattern or the wish changes. */
export function useSizing(pattern: Pattern, wish: SizeWish): SizingNow {
  const [job, run] = useJob('size');
  const [last, setLast] = useState<Reckoned | null>(null);
  const [isLong, setLong] = useState(false);
  const reckon = async () => {
    const answer = await run(pattern, wish);
    if (answer) setLast({ pattern, wish, answer });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: reckoned anew when what is asked changes.
  useEffect(() => void reckon(), [pattern, wish]);
  const isBusy = job.at === 'work';
  useEffect(() => {
    setLong(false);
    if (!isBusy) return;
    const timer = setTimeout(() => setLong(true), SOON);
    return () => clearTimeout(timer);
  }, [isBusy]);
  return {
    last: last?.pattern === pattern ? last : null,
    isNewest: last?.pattern === pattern && last.wish === wish,
    job,
    isLong: isLong && isBusy,
    again: () => void reckon(),
  };
}
