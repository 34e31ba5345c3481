import { z } from 'zod';
import type { Database, DesignCard } from './database.ts';
import { readSetting, THIS_BROWSER, writeSetting } from './settings.ts';

const schema = z.object({
  backup: z.object({ at: z.number(), revisions: z.record(z.string(), z.number()) }).optional(),
});
type ThisBrowser = z.output<typeof schema>;

const read = async (database: Database): Promise<ThisBrowser> =>
  (await readSetting(database, THIS_BROWSER, schema)) ?? {};

/** When the last backup was made, and how many edits were made since. */
export interface BackupAge {
  /** Milliseconds since 1970; null where none was ever made. */
  readonly at: number | null;
  readonly edits: number;
}

/** Keeps that a backup of these designs was made. */
export async function noteBackup(
  database: Database,
  cards: readonly DesignCard[],
  at: number,
): Promise<void> {
  const revisions = Object.fromEntries(cards.map(({ id, revision }) => [id, revision]));
  await writeSetting(database, THIS_BROWSER, { ...(await read(database)), backup: { at, revisions } });
}

/** A design's revision goes up with each edit, so what was done since a backup need not be counted apart. */
export async function backupAge(database: Database, cards: readonly DesignCard[]): Promise<BackupAge> {
  const { backup } = await read(database);
  const since = ({ id, revision }: DesignCard) => Math.max(0, revision - (backup?.revisions[id] ?? 0));
  return { at: backup?.at ?? null, edits: cards.reduce((sum, card) => sum + since(card), 0) };
}
