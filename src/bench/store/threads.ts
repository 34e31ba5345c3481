import { type ThreadEntry, threadListSchema } from '#pattern/threads/thread-list.ts';
import type { Database } from './database.ts';
import { useSettingList } from './setting-list.ts';
import { readSetting } from './settings.ts';

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
  const [list, change] = useSettingList(THREADS_SETTING, readThreads);
  return {
    list,
    keep: (threads) => {
      const names = threads.map(({ name }) => name);
      change((kept) => [...kept.filter(({ name }) => !names.includes(name)), ...threads]);
    },
    remove: (gone) => change((kept) => kept.filter(({ name }) => name !== gone)),
  };
}

const readThreads = async (database: Database): Promise<readonly ThreadEntry[]> =>
  (await readSetting(database, THREADS_SETTING, threadsSchema)) ?? [];
