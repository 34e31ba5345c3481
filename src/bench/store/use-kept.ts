import { useCallback, useEffect, useState } from 'react';
import type { z } from 'zod';
import { readSetting, settingOf, writeSetting } from './settings.ts';
import { useDatabase } from './use-database.ts';

/** Something kept of a design beside its pattern, such as how far the work with the needle is. */
export interface Kept<Value> {
  /** Undefined until it has been read; null where nothing is kept. */
  readonly value: Value | null | undefined;
  /** Whether the browser could not put it away, so that it holds only until the page is closed. */
  readonly lost: boolean;
  readonly keep: (value: Value | null) => void;
}

/** It survives the page, and goes with the design. */
export function useKept<Value>(design: string, what: string, schema: z.ZodType<Value>): Kept<Value> {
  const database = useDatabase();
  const name = settingOf(design, what);
  const [value, setValue] = useState<Value | null | undefined>(undefined);
  const [lost, setLost] = useState(false);
  useEffect(() => {
    let wanted = true;
    readSetting(database, name, schema).then(
      (kept) => wanted && setValue(kept),
      () => wanted && setValue(null),
    );
    return () => {
      wanted = false;
    };
  }, [database, name, schema]);
  const keep = useCallback(
    (next: Value | null) => {
      setValue(next);
      writeSetting(database, name, next).then(
        () => setLost(false),
        () => setLost(true),
      );
    },
    [database, name],
  );
  return { value, lost, keep };
}
