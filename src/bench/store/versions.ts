import type { Pattern } from '#pattern/pattern.ts';
import { type Database, under, type VersionCard, type Writing } from './database.ts';
import { getPattern, putPattern } from './pieces.ts';

const LAST = 20;
const DAYS = 14;
const DAY = 24 * 60 * 60 * 1000;

/** Keeps a state of a design as a version, and lets go of those that are neither among the last nor the last of a day. */
export async function keepVersion(
  write: Writing,
  design: string,
  pattern: Pattern,
  now: number,
): Promise<void> {
  const table = write.objectStore('versions');
  const versions = await table.getAll(under(design));
  const number = (versions.at(-1)?.number ?? 0) + 1;
  await putPattern(write, { table: 'versionPieces', key: [design, number] }, pattern);
  await table.put({ design, number, saved: now, pins: pattern.pins.length }, [design, number]);
  for (const old of versionsToDrop(versions, now)) {
    await table.delete([design, old.number]);
    await write.objectStore('versionPieces').delete(under(design, old.number));
  }
}

/** Of the versions before the newest, those that need not be kept: 20 with it, and one a day for 14 days. */
export function versionsToDrop(versions: readonly VersionCard[], now: number): VersionCard[] {
  const newestFirst = [...versions].sort((one, other) => other.number - one.number);
  const days = new Set<number>();
  return newestFirst.filter(({ saved }, index) => {
    const day = Math.floor(saved / DAY);
    const isLastOfDay = !days.has(day);
    days.add(day);
    if (index < LAST - 1) return false;
    return !isLastOfDay || now - saved > DAYS * DAY;
  });
}

/** The versions of a design, the newest first. */
export const listVersions = async (database: Database, design: string): Promise<VersionCard[]> =>
  (await database.getAll('versions', under(design))).reverse();

/** The pattern of a version, or null where it is no longer kept. */
export function readVersion(database: Database, { design, number }: VersionCard): Promise<Pattern | null> {
  const read = database.transaction(['versionPieces'], 'readonly');
  return getPattern(read, { table: 'versionPieces', key: [design, number] });
}
