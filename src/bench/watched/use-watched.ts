import { useSyncExternalStore } from 'react';
import type { Watched } from './watched.ts';

/** The value as it is now; the component is drawn again when it becomes another. */
export const useWatched = <Value>(watched: Watched<Value>): Value =>
  useSyncExternalStore(watched.subscribe, watched.get);
