import type { Packed } from '../backup/pack.ts';
import type { Restored } from '../backup/restore.ts';
import type { BackupTrouble } from '../backup/trouble.ts';
import { visible } from './quoted.ts';

/** Why nothing of a backup can be brought back, and what to do next. */
export function backupTroubleInWords(trouble: BackupTrouble): string {
  switch (trouble.kind) {
    case 'not-a-backup':
      return 'This is not a backup of Pinlight, so nothing was brought back. A backup is one file whose name begins with "pinlight-backup"; the file of one pattern opens with "Open a file".';
    case 'is-a-backup':
      return 'This is a backup of a whole shelf, not one pattern. On the shelf of the bench, choose "Bring back a backup".';
    case 'backup-newer':
      return `The backup is of version ${trouble.version}, and this program knows versions up to ${trouble.newest}. Nothing is wrong with it: get a newer Pinlight to bring it back. Nothing was brought back.`;
    case 'backup-damaged':
      return 'The backup is damaged or cut off, so nothing was brought back. Copy it again from where it came, or take an older backup.';
    case 'shelf-too-large':
      return 'Your patterns and their pictures are more than one file takes, so no backup was made. Save the largest as files of their own, remove them from the shelf, and try again.';
    case 'backup-too-large':
      return 'The file claims to hold more than any shelf of patterns does, so it was left unopened. It was not made by this program.';
  }
}

/** What went into a backup, a sentence each. */
export const packedInWords = ({ count, left }: Packed): string[] => [
  `${patterns(count)} with ${count === 1 ? 'its' : 'their'} pictures, undo steps and earlier versions, and your settings, are in the backup.`,
  ...(left.length > 0 ? [`Damaged, and not in the backup: ${names(left)}.`] : []),
];

/** What came of a backup, a sentence each. */
export function restoredInWords(restored: Restored): string[] {
  const { came, same, copies, damaged, lostVersions, lostSteps, settings } = restored;
  return [
    came.length > 0 ? `${patterns(came.length)} came back: ${names(came)}.` : 'No pattern was missing here.',
    same.length > 0 && `${patterns(same.length)} ${same.length === 1 ? 'was' : 'were'} here already.`,
    copies.length > 0 &&
      `Other than what is here, and so put beside it as ${copies.length === 1 ? 'a copy' : 'copies'}: ${names(copies)}.`,
    damaged.length > 0 &&
      `Damaged in the backup, and left out: ${names(damaged)}. An older backup may have ${damaged.length === 1 ? 'it' : 'them'} whole.`,
    lostVersions > 0 &&
      `${lostVersions} earlier version${lostVersions === 1 ? ' was' : 's were'} damaged in the backup and left out.`,
    lostSteps > 0 && `The undo steps of ${patterns(lostSteps)} were damaged in the backup and left out.`,
    settings === 'damaged' && 'The settings in the backup are damaged and were left out.',
  ].filter((sentence) => sentence !== false);
}

const patterns = (count: number): string => `${count} pattern${count === 1 ? '' : 's'}`;

const MOST_NAMED = 10;

function names(all: readonly string[]): string {
  const named = all.slice(0, MOST_NAMED).map((name) => `“${visible(name)}”`);
  if (all.length > MOST_NAMED) named.push(`and ${all.length - MOST_NAMED} more`);
  return named.join(', ');
}
