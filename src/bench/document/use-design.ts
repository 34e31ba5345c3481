import { createContext, use, useSyncExternalStore } from 'react';
import type { Pattern } from '#pattern/pattern.ts';
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

export function useDesignState(): DesignState {
  const { design } = useWork();
  return useSyncExternalStore(design.subscribe, design.state);
}

export const usePattern = (): Pattern => useDesignState().pattern;
