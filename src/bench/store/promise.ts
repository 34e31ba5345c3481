import type { Database } from './database.ts';
import { noteThisBrowser, readThisBrowser } from './this-browser.ts';

/** Whether the browser has promised to keep what is stored until the person removes it. */
export type Promised = 'promised' | 'not-promised';

/** Older browsers, and pages that are not secure, have no such promise to give. */
const storage: StorageManager | undefined = navigator.storage;

export const isPromised = async (): Promise<Promised> =>
  (await storage?.persisted?.().catch(() => false)) ? 'promised' : 'not-promised';

/** Asks the browser for the promise; some browsers ask the person in turn. */
export async function askForPromise(database: Database): Promise<Promised> {
  await noteThisBrowser(database, { asked: true });
  const given = await storage?.persist?.().catch(() => false);
  return given ? 'promised' : 'not-promised';
}

/** Asks once, after the first real edit: before it there is nothing to keep, and browsers judge by what was done. */
export async function askForPromiseOnce(database: Database): Promise<void> {
  const { asked } = await readThisBrowser(database);
  if (!asked) await askForPromise(database);
}
