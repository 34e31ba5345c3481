import { useCallback, useEffect, useState } from 'react';
import { z } from 'zod';
import { type PaperSize, paperNamed } from '#base/units/paper.ts';
import { type PrinterProfile, printerProfileSchema } from '#paper/calibrate/profile.ts';
import type { Database } from './database.ts';
import { readSetting, writeSetting } from './settings.ts';
import { useDatabase } from './use-database.ts';

/** Under these names they lie among the settings; backups take them from there. */
export const PAPER_SETTING = 'paper';
export const PRINTERS_SETTING = 'printers';

/** Printers that were measured. They say something of a printer, nothing of lace: so they are kept beside all patterns. */
export const printersSchema = z.array(printerProfileSchema);

/** The paper in this person's printer: asked once, null until then; undefined while the store is asked. */
export function usePaper(): readonly [PaperSize | null | undefined, (paper: PaperSize) => void] {
  const database = useDatabase();
  const [paper, setPaper] = useState<PaperSize | null>();
  useEffect(() => {
    readSetting(database, PAPER_SETTING, z.string()).then((name) => setPaper(paperNamed(name ?? '') ?? null));
  }, [database]);
  const choose = useCallback(
    (chosen: PaperSize) => {
      setPaper(chosen);
      void writeSetting(database, PAPER_SETTING, chosen.name);
    },
    [database],
  );
  return [paper, choose];
}

export interface Printers {
  readonly profiles: readonly PrinterProfile[];
  /** Keeps a printer, in the place of one of the same name where there is one. */
  keep(profile: PrinterProfile): void;
  remove(name: string): void;
}

export function usePrinters(): Printers {
  const database = useDatabase();
  const [profiles, setProfiles] = useState<readonly PrinterProfile[]>([]);
  useEffect(() => void readPrinters(database).then(setProfiles), [database]);
  const change = useCallback(
    async (edit: (kept: readonly PrinterProfile[]) => readonly PrinterProfile[]) => {
      // Read anew, since another page may have measured a printer meanwhile.
      const next = edit(await readPrinters(database));
      await writeSetting(database, PRINTERS_SETTING, next);
      setProfiles(next);
    },
    [database],
  );
  return {
    profiles,
    keep: (profile) => void change((kept) => [...without(kept, profile.name), profile]),
    remove: (name) => void change((kept) => without(kept, name)),
  };
}

const readPrinters = async (database: Database): Promise<readonly PrinterProfile[]> =>
  (await readSetting(database, PRINTERS_SETTING, printersSchema)) ?? [];

const without = (profiles: readonly PrinterProfile[], gone: string): PrinterProfile[] =>
  profiles.filter(({ name }) => name !== gone);
