import { useCallback, useEffect, useState } from 'react';
import { type ThreadEntry, threadListSchema } from '#pattern/threads/thread-list.ts';
import type { Database } from './database.ts';
import { readSetting, writeSetting } from './settings.ts';
import { useDatabase } from './use-database.ts';

/** Under this name they lie among the settings; backups take them from there. */
const THREADS_SETTING = 'threads';

const threadsSchema = threadListSchema.shape.threads;

export interface Threads {
  readonly list: readonly ThreadEntry[];
  /** Keeps threads, each in the place of one of the same name where there is one. */
  keep(threads: readonly ThreadEntry[]): void;
  remove(name: string): void;
}

/** This person's own threads. They say nothing of a pattern: so they are kept beside all patterns. */
export function useThreads(): Threads {
  const database = useDatabase();
  const [list, setList] = useState<readonly ThreadEntry[]>([]);
  useEffect(() => void readThreads(database).then(setList), [database]);
  const change = useCallback(
    async (edit: (kept: readonly ThreadEntry[]) => readonly ThreadEntry[]) => {
      // Read anew, since another page may have kept a thread meanwhile.
      const next = edit(await readThreads(database));
      await writeSetting(database, THREADS_SETTING, next);
      setList(next);
    },
    [database],
  );
  return {
    list,
    keep: (threads) => {
      const names = threads.map(({ name }) => name);
      void change((kept) => [...kept.filter(({ name }) => !names.includes(name)), ...threads]);
    },
    remove: (gone) => void change((kept) => kept.filter(({ name }) => name !== gone)),
  };
}

const readThreads = async (database: Database): Promise<readonly ThreadEntry[]> =>
  (await readSetting(database, THREADS_SETTING, threadsSchema)) ?? [];
