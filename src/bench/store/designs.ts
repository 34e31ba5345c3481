import { applyChange, undoChange } from '#pattern/change/change.ts';
import type { Step } from '#pattern/change/step.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { restNowAndThen } from '../parts/next-task.ts';
import { abandon, type Database, type DesignCard, type Reading, type TableName, under } from './database.ts';
import { fileOf, type KeptFile, keptFile } from './kept-file.ts';
import { getPattern, putPattern } from './pieces.ts';
import { keepVersion } from './versions.ts';

/** A design as it comes out of the store. */
export interface StoredDesign {
  readonly card: DesignCard;
  readonly pattern: Pattern;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  readonly pictures: ReadonlyMap<string, Blob>;
}

/** A pattern that comes to the shelf, with its picture files. */
export interface Arrival {
  readonly pattern: Pattern;
  readonly pictures: ReadonlyMap<string, Uint8Array | Blob>;
}

/** A design that comes from elsewhere with its history. */
export interface IncomingDesign extends Arrival {
  readonly id: string;
  readonly name: string;
  readonly created: number;
  readonly changed: number;
  /** The oldest first. */
  readonly versions: readonly { readonly saved: number; readonly pattern: Pattern }[];
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** All designs on the shelf, the last changed first. */
export async function listDesigns(database: Database): Promise<DesignCard[]> {
  const cards = await database.getAll('cards');
  return cards
    .filter(({ removed }) => removed === undefined)
    .sort((one, other) => other.changed - one.changed);
}

/** An id that no other design has, also where the page did not come over a secure connection. */
const freshId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join(
    '',
  );

/** Puts a new design on the shelf and gives back its id. */
export async function createDesign(
  database: Database,
  { pattern, pictures }: Arrival,
  name: string,
): Promise<string> {
  const id = freshId();
  const now = Date.now();
  const facts = { id, name, created: now, changed: now };
  await putDesign(database, { ...facts, pattern, pictures, versions: [], past: [], future: [] });
  return id;
}

/** Puts a design with its steps and earlier versions where there is none of that id, whole or not at all. */
export async function putDesign(database: Database, design: IncomingDesign): Promise<void> {
  const { id, name, created, changed, pattern, pictures, versions, past, future } = design;
  const kept: (readonly [string, KeptFile])[] = [];
  for (const [entry, file] of pictures) {
    const blob = file instanceof Blob ? file : new Blob([file as BlobPart], { type: typeOf(entry) });
    kept.push([entry, await keptFile(blob)]);
  }
  const write = database.transaction(TABLES, 'readwrite');
  try {
    await putPattern(write, { table: 'pieces', key: [id] }, pattern);
    for (const version of versions) await keepVersion(write, id, version.pattern, version.saved);
    for (const [number, step] of [...past, ...future].entries())
      await write.objectStore('steps').put(step, [id, number]);
    for (const [entry, file] of kept) await write.objectStore('pictures').put(file, [id, entry]);
    await write.objectStore('cards').put({
      ...{ id, name, created, changed, revision: 1 },
      ...{ first: 0, done: past.length, at: past.length, pins: pattern.pins.length },
    });
    await write.done;
  } catch (error) {
    // Without this the part that was put by then would stay.
    await abandon(write);
    throw error;
  }
}

/**
 * A design with everything that was done to it, or null where there is none of that id. Rejects where it is damaged;
 * its versions may still be whole.
 */
export async function readDesign(database: Database, id: string): Promise<StoredDesign | null> {
  const read = database.transaction(['cards', 'pieces', 'steps', 'pictures'], 'readonly');
  const card = await read.objectStore('cards').get(id);
  if (!card) return null;
  const kept = await getPattern(read, { table: 'pieces', key: [id] });
  const steps = await readSteps(read, id);
  const [entries, files] = await Promise.all([
    read.objectStore('pictures').getAllKeys(under(id)),
    read.objectStore('pictures').getAll(under(id)),
  ]);
  if (!kept || steps.length < card.done - card.first) throw new DamagedDesign(card.name);
  const done = card.done - card.first;
  const at = card.at - card.first;
  const forward = steps.slice(at, Math.max(at, done));
  const back = steps.slice(done, Math.max(at, done)).reverse();
  const rest = restNowAndThen();
  let pattern = kept;
  for (const { change } of forward) {
    pattern = applyChange(pattern, change);
    await rest();
  }
  for (const { change } of back) {
    pattern = applyChange(pattern, undoChange(change));
    await rest();
  }
  const pictures = new Map(entries.map(([, entry], index) => [entry, fileOf(files[index]!)]));
  return { card, pattern, past: steps.slice(0, done), future: steps.slice(done), pictures };
}

/** All steps of a design, one by one: those of a large pattern take long to read. */
async function readSteps(read: Reading, id: string): Promise<Step[]> {
  const steps: Step[] = [];
  let cursor = await read.objectStore('steps').openCursor(under(id));
  for (; cursor; cursor = await cursor.continue()) steps.push(cursor.value);
  return steps;
}

/** The pictures of a design, by the names of their entries. */
export async function readPictures(database: Database, id: string): Promise<Map<string, Blob>> {
  const read = database.transaction('pictures', 'readonly');
  const [entries, files] = await Promise.all([
    read.store.getAllKeys(under(id)),
    read.store.getAll(under(id)),
  ]);
  return new Map(entries.map(([, entry], index) => [entry, fileOf(files[index]!)]));
}

/** A design whose records do not fit together. */
export class DamagedDesign extends Error {
  override readonly name = 'DamagedDesign';
}

export async function renameDesign(database: Database, id: string, name: string): Promise<void> {
  const write = database.transaction('cards', 'readwrite');
  const card = await write.store.get(id);
  if (card) await write.store.put({ ...card, name });
  await write.done;
}

/** Every table that a design has records in. */
export const TABLES: TableName[] = ['cards', 'pieces', 'steps', 'pictures', 'versions', 'versionPieces'];

const typeOf = (entry: string): string => (entry.endsWith('.png') ? 'image/png' : 'image/jpeg');
