import { type Database, type TableName, under } from './database.ts';
import { TABLES } from './designs.ts';
import { settingsOf } from './settings.ts';

/** A design that was removed so long ago is cleared away when the shelf is next seen; no page offers it any more. */
const PATIENCE = 60 * 60 * 1000;

/** Takes a design off the shelf; it is still there to be put back until it is cleared away. */
export async function setAside(database: Database, id: string, now: number): Promise<void> {
  const write = database.transaction('cards', 'readwrite');
  const card = await write.store.get(id);
  if (card) await write.store.put({ ...card, removed: now });
  await write.done;
}

export async function putBack(database: Database, id: string): Promise<void> {
  const write = database.transaction('cards', 'readwrite');
  const card = await write.store.get(id);
  if (card) {
    const { removed: _, ...kept } = card;
    await write.store.put(kept);
  }
  await write.done;
}

/** Removes everything of a design for good, where it is set aside. */
export async function clearAway(database: Database, id: string): Promise<void> {
  const write = database.transaction<TableName[], 'readwrite'>([...TABLES, 'settings'], 'readwrite');
  const card = await write.objectStore('cards').get(id);
  if (card?.removed !== undefined) {
    await write.objectStore('cards').delete(id);
    for (const table of ['pieces', 'steps', 'pictures', 'versions', 'versionPieces'] as const) {
      await write.objectStore(table).delete(under(id));
    }
    await write.objectStore('settings').delete(settingsOf(id));
  }
  await write.done;
}

/** Clears away what was set aside in pages that are gone. */
export async function clearAwayOld(database: Database, now: number): Promise<void> {
  for (const { id, removed } of await database.getAll('cards')) {
    if (removed !== undefined && now - removed > PATIENCE) await clearAway(database, id);
  }
}
