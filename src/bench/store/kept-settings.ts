import type { Database } from './database.ts';
import { THIS_BROWSER } from './settings.ts';

type Settings = Record<string, unknown>;

const isRecord = (value: unknown): value is Settings =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** All settings but those that are of this browser alone. */
export async function settingsToKeep(database: Database): Promise<Settings> {
  const names = await database.getAllKeys('settings');
  const settings: Settings = {};
  for (const name of names) if (name !== THIS_BROWSER) settings[name] = await database.get('settings', name);
  return settings;
}

/**
 * Adds settings from a backup to those here. One that is here stays as it is; where both are lists of records with ids
 * or names, those that are not here are added. `ids` leads from designs to the copies as which they came, for settings
 * that bear the id of a design in their name.
 */
export async function takeSettings(
  database: Database,
  kept: unknown,
  ids: ReadonlyMap<string, string>,
): Promise<void> {
  if (!isRecord(kept)) return;
  const write = database.transaction('settings', 'readwrite');
  for (const [name, value] of Object.entries(kept)) {
    if (name === THIS_BROWSER) continue;
    const here = renamed(name, ids);
    const present = await write.store.get(here);
    const wanted = present === undefined ? value : joined(present, value);
    if (wanted !== present) await write.store.put(wanted, here);
  }
  await write.done;
}

function renamed(name: string, ids: ReadonlyMap<string, string>): string {
  for (const [from, to] of ids) if (name.includes(from)) return name.replace(from, to);
  return name;
}

function joined(present: unknown, value: unknown): unknown {
  if (!Array.isArray(present) || !Array.isArray(value)) return present;
  const known = new Set(present.map(markOf));
  const others = value.filter((record) => markOf(record) !== null && !known.has(markOf(record)));
  return others.length > 0 ? [...present, ...others] : present;
}

/** What tells a record from the others in its list; null where nothing does. */
function markOf(record: unknown): string | null {
  const mark = isRecord(record) ? (record.id ?? record.name) : record;
  return typeof mark === 'string' ? mark : null;
}
