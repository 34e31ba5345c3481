import { createContext, use } from 'react';
import type { Database } from './database.ts';

export const DatabaseContext = createContext<Database | null>(null);

/** The store of this browser. Throws outside of the bench. */
export function useDatabase(): Database {
  const database = use(DatabaseContext);
  if (!database) throw new Error('useDatabase: there is no store here');
  return database;
}
