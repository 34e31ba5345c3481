import type { Cover, Database } from './database.ts';

/** Keeps the cover of a design, whatever else became of its card meanwhile. */
export async function keepCover(database: Database, id: string, cover: Cover): Promise<void> {
  const write = database.transaction('cards', 'readwrite');
  const card = await write.store.get(id);
  if (card) await write.store.put({ ...card, cover });
  await write.done;
}
