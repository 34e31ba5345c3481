import { useCallback, useEffect, useState } from 'react';
import { z } from 'zod';
import { type PaperSize, paperNamed } from '#base/units/paper.ts';
import { type PrinterProfile, printerProfileSchema } from '#paper/calibrate/profile.ts';
import type { Database } from './database.ts';
import { useSettingList } from './setting-list.ts';
import { readSetting, writeSetting } from './settings.ts';
import { useDatabase } from './use-database.ts';

/** Under these names they lie among the settings, from where backups take them: beside all patterns, never in one. */
const PAPER_SETTING = 'paper';
const PRINTERS_SETTING = 'printers';

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
  const [profiles, change] = useSettingList(PRINTERS_SETTING, readPrinters);
  return {
    profiles,
    keep: (profile) => change((kept) => withProfile(kept, profile)),
    remove: (name) => change((kept) => without(kept, name)),
  };
}

/** Those that are sound: one that is damaged does not take the others with it. */
async function readPrinters(database: Database): Promise<readonly PrinterProfile[]> {
  const kept = (await readSetting(database, PRINTERS_SETTING, z.array(z.unknown()))) ?? [];
  return kept.flatMap((one) => {
    const profile = printerProfileSchema.safeParse(one);
    return profile.success ? [profile.data] : [];
  });
}

const withProfile = (profiles: readonly PrinterProfile[], kept: PrinterProfile): PrinterProfile[] =>
  profiles.some(({ name }) => name === kept.name)
    ? profiles.map((one) => (one.name === kept.name ? kept : one))
    : [...profiles, kept];

const without = (profiles: readonly PrinterProfile[], gone: string): PrinterProfile[] =>
  profiles.filter(({ name }) => name !== gone);
