import { createContext, use } from 'react';
import type { Point } from '#base/geometry/point.ts';
import type { About } from '#pattern/pattern.ts';
import type { StageId } from './stage.ts';

/** Where on the sheet something is to be seen to. */
export interface Place {
  readonly at: Point;
  /** Id of the pin that it is about; null where a pin is missing. */
  readonly pin: string | null;
}

/** Where a stage can lead to when something is not mended by itself. The workbench knows the ways. */
export interface Ways {
  readonly toStage: (stage: StageId, place?: Place) => void;
  /** The place that the stage before led to; null where one came by oneself. */
  readonly place: Place | null;
  /** To what is said of the pattern, and to the field of it that is to be written. */
  readonly toAbout: (field: keyof About) => void;
}

export const WaysContext = createContext<Ways | null>(null);

export function useWays(): Ways {
  const ways = use(WaysContext);
  if (!ways) throw new Error('useWays: there is no workbench here');
  return ways;
}
