import type { z } from 'zod';
import type { Database } from './database.ts';

/** The setting of what is of this browser alone, such as when its last backup was made. */
export const THIS_BROWSER = 'this-browser';

/** A setting kept in this browser, such as a printer's correction; null where there is none, or none that is sound. */
export async function readSetting<Value>(
  database: Database,
  name: string,
  schema: z.ZodType<Value>,
): Promise<Value | null> {
  const kept = schema.safeParse(await database.get('settings', name));
  return kept.success ? kept.data : null;
}

/** Keeps a setting: a plain value such as JSON can carry, since backups do. */
export const writeSetting = (database: Database, name: string, value: unknown): Promise<string> =>
  database.put('settings', value, name);

/** The name of a setting that belongs to one design, and goes when it goes. */
export const settingOf = (design: string, what: string): string => `design/${design}/${what}`;

/** The names of all settings of a design. */
export const settingsOf = (design: string): IDBKeyRange =>
  IDBKeyRange.bound(settingOf(design, ''), settingOf(design, '\uffff'));
