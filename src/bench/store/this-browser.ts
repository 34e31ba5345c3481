import { z } from 'zod';
import type { Database, DesignCard } from './database.ts';
import { THIS_BROWSER } from './settings.ts';

/** A moment, and the revision of every design at it: a revision goes up with each edit, so none need be counted. */
const momentSchema = z.object({ at: z.number().nullable(), revisions: z.record(z.string(), z.number()) });
type Moment = z.output<typeof momentSchema>;

const schema = z.object({
  /** What is safe in a backup. */
  backup: momentSchema.optional(),
  /** Since when the reminder is silent. */
  hushed: momentSchema.optional(),
  /** Whether the browser was asked to keep what is stored for good. */
  asked: z.boolean().optional(),
});
export type ThisBrowser = z.output<typeof schema>;

/** What is known of this browser alone; it goes into no backup. */
export async function readThisBrowser(database: Database): Promise<ThisBrowser> {
  const read = schema.safeParse(await database.get('settings', THIS_BROWSER));
  return read.success ? read.data : {};
}

export async function noteThisBrowser(database: Database, change: ThisBrowser): Promise<void> {
  await database.put('settings', { ...(await readThisBrowser(database)), ...change }, THIS_BROWSER);
}

export const momentOf = (cards: readonly DesignCard[], at: number): Moment => ({
  at,
  revisions: Object.fromEntries(cards.map(({ id, revision }) => [id, revision])),
});

/** Designs that came from a backup are safe in it, and nothing need be said for a while. */
export async function noteBroughtBack(database: Database, ids: readonly string[], at: number): Promise<void> {
  const { backup } = await readThisBrowser(database);
  const revisions = { ...backup?.revisions, ...Object.fromEntries(ids.map((id) => [id, 1])) };
  await noteThisBrowser(database, {
    backup: { at: backup?.at ?? null, revisions },
    hushed: momentOf(await database.getAll('cards'), at),
  });
}
