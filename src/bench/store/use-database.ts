import { createContext, use } from 'react';
import type { Database } from './database.ts';

/** The store, and whether it keeps anything once the browser is closed. */
export interface Store {
  readonly database: Database;
  readonly keeps: boolean;
}

export const StoreContext = createContext<Store | null>(null);

/** The store of this browser. Throws outside of the bench. */
export const useDatabase = (): Database => useStore().database;

/** Whether this browser keeps what is stored. */
export const useKeeps = (): boolean => useStore().keeps;

function useStore(): Store {
  const store = use(StoreContext);
  if (!store) throw new Error('useStore: there is no store here');
  return store;
}
