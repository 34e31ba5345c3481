import { clearsWeekly } from './clears-weekly.ts';
import type { Database } from './database.ts';
import { isInstalled } from './is-installed.ts';
import { noteThisBrowser, readThisBrowser } from './this-browser.ts';

/**
 * Whether the browser has promised to keep what is stored until the person removes it; and where it has not, whether it
 * is one that clears away what was not used for a week.
 */
export type Promised = 'promised' | 'not-promised' | 'a-week';

/** Older browsers, and pages that are not secure, have no such promise to give. */
const storage: StorageManager | undefined = navigator.storage;

export const isPromised = async (): Promise<Promised> =>
  (await storage?.persisted?.().catch(() => false)) ? 'promised' : unpromised();

const unpromised = (): Promised =>
  clearsWeekly(navigator.userAgent, isInstalled()) ? 'a-week' : 'not-promised';

/** Asks the browser for the promise; some browsers ask the person in turn. */
export async function askForPromise(database: Database): Promise<Promised> {
  await noteThisBrowser(database, { asked: true });
  const given = await storage?.persist?.().catch(() => false);
  return given ? 'promised' : unpromised();
}

/** Asks once, after the first real edit: before it there is nothing to keep, and browsers judge by what was done. */
export async function askForPromiseOnce(database: Database): Promise<void> {
  const { asked } = await readThisBrowser(database);
  if (!asked) await askForPromise(database);
}
