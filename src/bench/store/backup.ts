import type { WholeDesign } from '#jobs/backup/backup.ts';
import type { BackupSource } from '#jobs/backup/pack.ts';
import type { BackupSink } from '#jobs/backup/restore.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { preferencesNow, takePreferences } from '../settings/preferences.ts';
import type { Database, DesignCard } from './database.ts';
import { listDesigns, putDesign, readDesign, readPictures } from './designs.ts';
import { settingsToKeep, takeSettings } from './kept-settings.ts';
import { clearAway } from './remove.ts';
import { listVersions, readVersion } from './versions.ts';

type WithBlobs<Design extends PatternWithPictures> = Omit<Design, 'pictures'> & {
  readonly pictures: ReadonlyMap<string, Blob>;
};

/** The shelf as a backup is made from it; its pictures stay where they are until they are needed. */
export type ShelfSource = Omit<BackupSource, 'design'> & {
  design(index: number): Promise<WithBlobs<WholeDesign> | null>;
};

/** The shelf as a backup is brought back to it. */
export type ShelfSink = Omit<BackupSink, 'held'> & {
  held(id: string): Promise<WithBlobs<PatternWithPictures> | 'damaged' | null>;
};

/** What a backup of this browser is made from. Calls `onUnreadable` with the name of each design that cannot be read. */
export function shelfSource(database: Database, onUnreadable: (name: string) => void): ShelfSource {
  let cards: readonly DesignCard[] = [];
  return {
    async begin() {
      cards = await listDesigns(database);
      return { made: Date.now(), count: cards.length };
    },
    async design(index) {
      const { id, name, created, changed } = cards[index]!;
      const versions: { saved: number; pattern: Pattern }[] = [];
      for (const version of (await listVersions(database, id)).reverse()) {
        const pattern = await readVersion(database, version);
        if (pattern) versions.push({ saved: version.saved, pattern });
      }
      const stored = await readDesign(database, id).catch(() => null);
      // Of a damaged design the newest version that is whole goes in.
      const pattern = stored?.pattern ?? versions.at(-1)?.pattern;
      if (!pattern) {
        onUnreadable(name);
        return null;
      }
      const steps = { past: stored?.past ?? [], future: stored?.future ?? [] };
      const pictures = stored?.pictures ?? (await readPictures(database, id));
      return { id, name, created, changed, pattern, pictures, ...steps, versions };
    },
    settings: async () => ({ kept: await settingsToKeep(database), preferences: preferencesNow() }),
  };
}

/** What happens while a backup is brought back. */
export interface ShelfSinkEvents {
  /** A design came, under this id. */
  came(id: string): void;
  /** There is no room for the next one. */
  full(): void;
}

/** Where a backup is brought back to. */
export function shelfSink(database: Database, events: ShelfSinkEvents): ShelfSink {
  return {
    async held(id) {
      await clearAway(database, id);
      if (!(await database.get('cards', id))) return null;
      const stored = await readDesign(database, id).catch(() => null);
      return stored ? { pattern: stored.pattern, pictures: stored.pictures } : 'damaged';
    },
    async put(design) {
      try {
        await putDesign(database, design);
      } catch (error) {
        if (error instanceof DOMException && error.name === 'QuotaExceededError') events.full();
        throw error;
      }
      events.came(design.id);
    },
    async putSettings({ kept, preferences }, ids) {
      await takeSettings(database, kept, ids);
      takePreferences(preferences);
    },
  };
}
