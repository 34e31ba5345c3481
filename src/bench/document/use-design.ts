import { createContext, use } from 'react';
import type { Pattern } from '#pattern/pattern.ts';
import { useWatched } from '../watched/use-watched.ts';
import type { DesignState, OpenDesign } from './open-design.ts';

/** The open design with the pictures that it speaks of. */
export interface OpenWork {
  readonly id: string;
  readonly name: string;
  readonly design: OpenDesign;
  /** Picture files by the names of their entries. */
  readonly pictures: ReadonlyMap<string, Blob>;
}

export const WorkContext = createContext<OpenWork | null>(null);

/** The work that is open. Throws outside of the workbench. */
export function useWork(): OpenWork {
  const work = use(WorkContext);
  if (!work) throw new Error('useWork: nothing is open here');
  return work;
}

export const useDesignState = (): DesignState => useWatched(useWork().design.watched);

export const usePattern = (): Pattern => useDesignState().pattern;
