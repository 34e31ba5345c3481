import { OpenDesign } from '../document/open-design.ts';
import { Watched } from '../watched/watched.ts';
import type { Database } from './database.ts';
import { DesignJournal, type Saved } from './design-journal.ts';
import { readDesign } from './designs.ts';
import { holdDesign } from './holding.ts';
import { askForPromiseOnce } from './promise.ts';

/** A design on the bench, with everything that keeps it safe. */
export interface OpenedWork {
  readonly id: string;
  readonly name: string;
  readonly design: OpenDesign;
  readonly pictures: ReadonlyMap<string, Blob>;
  readonly saved: Watched<Saved>;
  /** Makes it editable here where another page held it. */
  takeOver(): Promise<void>;
  /** Resolves when everything is put away: to whether it could be. */
  settled(): Promise<boolean>;
  /** Puts everything away and lets go of it. */
  close(): Promise<void>;
}

const openWorks = new Set<OpenedWork>();

/** Resolves when everything done in this page is put away: to whether it could be. */
export async function putAllAway(): Promise<boolean> {
  const saved = await Promise.all([...openWorks].map((work) => work.settled()));
  return saved.every((one) => one);
}

/**
 * Opens a design to work on, or gives null where there is none of that id. Rejects where it is damaged. Where another
 * page of this browser holds it, it can only be looked at.
 */
export async function openWork(database: Database, id: string): Promise<OpenedWork | null> {
  let journal: DesignJournal | null = null;
  let design: OpenDesign | null = null;
  const saved = new Watched<Saved>({ at: 'saved' });
  const holding = await holdDesign(id, {
    letGo: async () => {
      await journal?.settled();
      design?.setEditable(false);
    },
    changed: (held) => design?.setEditable(held),
  });
  const stored = await readDesign(database, id).catch((error: unknown) => {
    holding.release();
    throw error;
  });
  if (!stored) {
    holding.release();
    return null;
  }
  const { card, pattern, past, future, pictures } = stored;
  const state = { pattern, past, future, editable: holding.held };
  let edited = false;
  journal = new DesignJournal(database, card, state, (now) => {
    saved.set(now);
    if (now.at !== 'saved' || edited) return;
    edited = true;
    void askForPromiseOnce(database);
  });
  design = new OpenDesign(state, journal);
  const work: OpenedWork = {
    id,
    name: card.name,
    design,
    pictures,
    saved,
    async takeOver() {
      await holding.takeOver();
      // What the other page did last is in the store by now.
      location.reload();
    },
    async settled() {
      await journal.settled();
      return saved.get().at !== 'failed';
    },
    async close() {
      await journal.settled();
      holding.release();
      openWorks.delete(work);
    },
  };
  openWorks.add(work);
  return work;
}
