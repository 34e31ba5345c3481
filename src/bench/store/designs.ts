import { applyChange } from '#pattern/change/change.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { Step } from '../document/step.ts';
import { allOf, type Database, type DesignCard } from './database.ts';

/** A design as it comes out of the store. */
export interface StoredDesign {
  readonly card: DesignCard;
  readonly pattern: Pattern;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  readonly pictures: ReadonlyMap<string, Blob>;
}

/** All designs, the last changed first. */
export async function listDesigns(database: Database): Promise<DesignCard[]> {
  const cards = await database.getAll('cards');
  return cards.sort((one, other) => other.changed - one.changed);
}

/** Puts a new design on the shelf and gives back its id. */
export async function createDesign(
  database: Database,
  { pattern, pictures }: PatternWithPictures,
  name: string,
): Promise<string> {
  const id = crypto.randomUUID();
  const now = Date.now();
  const write = database.transaction(['cards', 'patterns', 'pictures'], 'readwrite');
  const card = { id, name, created: now, changed: now, revision: 1, done: 0, pins: pattern.pins.length };
  await Promise.all([
    write.objectStore('cards').put(card),
    write.objectStore('patterns').put({ from: 0, pattern }, id),
    ...[...pictures].map(([entry, bytes]) =>
      write.objectStore('pictures').put(new Blob([bytes as BlobPart]), [id, entry]),
    ),
    write.done,
  ]);
  return id;
}

/** A design with everything that was done to it, or null where there is none of that id. */
export async function readDesign(database: Database, id: string): Promise<StoredDesign | null> {
  const read = database.transaction(['cards', 'patterns', 'steps', 'pictures']);
  const [card, base, steps, entries, blobs] = await Promise.all([
    read.objectStore('cards').get(id),
    read.objectStore('patterns').get(id),
    read.objectStore('steps').getAll(allOf(id)),
    read.objectStore('pictures').getAllKeys(allOf(id)),
    read.objectStore('pictures').getAll(allOf(id)),
  ]);
  if (!card || !base) return null;
  const done = card.done - base.from;
  const past = steps.slice(0, done);
  const pattern = past.reduce((before, { change }) => applyChange(before, change), base.pattern);
  const pictures = new Map(entries.map(([, entry], index) => [entry, blobs[index]!]));
  return { card, pattern, past, future: steps.slice(done), pictures };
}
