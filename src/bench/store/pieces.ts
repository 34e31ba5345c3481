import type { Pattern } from '#pattern/pattern.ts';
import type { Piece, Reading, Writing } from './database.ts';
import { under } from './database.ts';

const LISTS = ['pins', 'runs', 'marks', 'areas'] as const;
const REST = 'rest';

/** Records of one piece: few enough that putting it away does not hold up the page. */
const PIECE = 4000;

/** Where a pattern lies in pieces: as a design's present, or as one of its versions. */
export type PiecePlace =
  | { readonly table: 'pieces'; readonly key: readonly [design: string] }
  | { readonly table: 'versionPieces'; readonly key: readonly [design: string, version: number] };

/** Puts a pattern away in place of what was there. */
export async function putPattern(write: Writing, place: PiecePlace, pattern: Pattern): Promise<void> {
  const table = write.objectStore(place.table);
  await table.delete(under(...place.key));
  const put = (list: string, number: number, piece: Piece) =>
    table.put(piece, [...place.key, list, number] as never);
  const { pins: _pins, runs: _runs, marks: _marks, areas: _areas, ...rest } = pattern;
  await put(REST, 0, rest);
  for (const list of LISTS) {
    const records = pattern[list];
    for (let first = 0; first < records.length; first += PIECE) {
      await put(list, first / PIECE, records.slice(first, first + PIECE) as Piece);
    }
  }
}

/** The pattern that lies there, or null where there is none. */
export async function getPattern(read: Reading, place: PiecePlace): Promise<Pattern | null> {
  const table = read.objectStore(place.table);
  let rest: Piece | null = null;
  const lists: Record<(typeof LISTS)[number], unknown[]> = { pins: [], runs: [], marks: [], areas: [] };
  for (let cursor = await table.openCursor(under(...place.key)); cursor; cursor = await cursor.continue()) {
    const list = cursor.key.at(-2) as (typeof LISTS)[number] | typeof REST;
    if (list === REST) rest = cursor.value;
    else for (const record of cursor.value as unknown[]) lists[list].push(record);
  }
  return rest && ({ ...rest, ...lists } as unknown as Pattern);
}
