import type { DesignCard } from '../store/database.ts';
import type { ThisBrowser } from '../store/this-browser.ts';

const DAY = 24 * 60 * 60 * 1000;
const MOST_DAYS = 7;
const MOST_EDITS = 50;

/** How old the last backup is. */
export interface BackupAge {
  /** Whole days; null where none was made in this browser. */
  readonly days: number | null;
  /** Edits that are in no backup. */
  readonly edits: number;
  /** Whether it is time to say so. */
  readonly due: boolean;
}

/**
 * How old the last backup of these designs is, and whether to remind of it: after 7 days, or 50 edits. Where the browser
 * clears away what was not used for a week, any edit is enough, since nobody may be there to be reminded later.
 */
export function backupAge(
  cards: readonly DesignCard[],
  { backup, hushed }: ThisBrowser,
  now: number,
  clearsWeekly = false,
): BackupAge {
  const editsSince = (known: Readonly<Record<string, number>>): number =>
    cards.reduce((sum, { id, revision }) => sum + Math.max(0, revision - (known[id] ?? 0)), 0);
  const at = backup?.at ?? null;
  const edits = editsSince(backup?.revisions ?? {});
  // Reckoned from the last backup or the last reminder, or from when the first design came.
  const from = Math.max(at ?? 0, hushed?.at ?? 0) || Math.min(...cards.map(({ created }) => created));
  const unsaid = Math.min(edits, editsSince(hushed?.revisions ?? {}));
  const enough = clearsWeekly ? 1 : MOST_EDITS;
  const due = edits > 0 && (now - from > MOST_DAYS * DAY || unsaid >= enough);
  return { days: at === null ? null : Math.floor((now - at) / DAY), edits, due };
}

/** 'Last backup: 3 days ago, and 12 changes since.' */
export function backupAgeInWords({ days, edits }: BackupAge): string {
  if (days === null) return 'Last backup: none was made in this browser yet.';
  const ago = days <= 0 ? 'today' : days === 1 ? 'yesterday' : `${days} days ago`;
  if (edits === 0) return `Last backup: ${ago}, and nothing has changed since.`;
  return `Last backup: ${ago}, and ${edits} change${edits === 1 ? '' : 's'} since.`;
}
