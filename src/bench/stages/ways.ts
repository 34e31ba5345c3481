import { createContext, use } from 'react';
import type { About } from '#pattern/pattern.ts';
import type { StageId } from './stage.ts';

/** Where a stage can lead to when something is not mended by itself. The workbench knows the ways. */
export interface Ways {
  readonly toStage: (stage: StageId) => void;
  /** To what is said of the pattern, and to the field of it that is to be written. */
  readonly toAbout: (field: keyof About) => void;
}

export const WaysContext = createContext<Ways | null>(null);

export function useWays(): Ways {
  const ways = use(WaysContext);
  if (!ways) throw new Error('useWays: there is no workbench here');
  return ways;
}
