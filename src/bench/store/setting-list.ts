import { useCallback, useEffect, useState } from 'react';
import type { Database } from './database.ts';
import { writeSetting } from './settings.ts';
import { useDatabase } from './use-database.ts';

/** A list that a person keeps beside all patterns, such as the printers that were measured, and a way to change it. */
export function useSettingList<One>(
  name: string,
  read: (database: Database) => Promise<readonly One[]>,
): readonly [readonly One[], (edit: (kept: readonly One[]) => readonly One[]) => void] {
  const database = useDatabase();
  const [list, setList] = useState<readonly One[]>([]);
  useEffect(() => void read(database).then(setList), [database, read]);
  const change = useCallback(
    async (edit: (kept: readonly One[]) => readonly One[]) => {
      // Read anew, since another page may have changed the list meanwhile.
      const next = edit(await read(database));
      await writeSetting(database, name, next);
      setList(next);
    },
    [database, name, read],
  );
  return [list, (edit) => void change(edit)];
}
