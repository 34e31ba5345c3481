import type { Progress } from '#base/progress.ts';
import type { Result } from '#base/result.ts';
import { MOST_BACKUP_BYTES } from '#jobs/backup/manifest.ts';
import { type Packed, packBackup } from '#jobs/backup/pack.ts';
import { restoreBackup } from '#jobs/backup/restore.ts';
import type { BackupTrouble } from '#jobs/backup/trouble.ts';
import type { ShelfSink, ShelfSource } from '../store/backup.ts';
import { bytesOf } from './bytes.ts';

/** So much of a backup is gathered before the browser may put it away from memory, bytes. */
const HANDFUL = 32 * 1024 * 1024;

/** Makes the backup of a shelf, which the page hands over a design at a time. */
export async function backUp(
  source: ShelfSource,
  progress: Progress,
): Promise<Result<Packed & { readonly file: Blob }, BackupTrouble>> {
  const blobs: Blob[] = [];
  let pieces: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  const putAway = () => {
    blobs.push(new Blob(pieces));
    [pieces, size] = [[], 0];
  };
  const packed = await packBackup(
    {
      begin: () => source.begin(),
      settings: () => source.settings(),
      design: async (index) => {
        const design = await source.design(index);
        return design && { ...design, pictures: await bytesOf(design.pictures) };
      },
    },
    (piece) => {
      pieces.push(piece.slice());
      size += piece.length;
      if (size > HANDFUL) putAway();
    },
    progress,
  );
  if (!packed.ok) return packed;
  putAway();
  return { ok: true, value: { ...packed.value, file: new Blob(blobs, { type: 'application/zip' }) } };
}

/** Brings a backup back to the shelf, which the page adds to a design at a time. */
export async function bringBack(file: Blob, sink: ShelfSink, progress: Progress) {
  if (file.size > MOST_BACKUP_BYTES) {
    return { ok: false, trouble: { kind: 'backup-too-large' } } as const;
  }
  return restoreBackup(
    new Uint8Array(await file.arrayBuffer()),
    {
      put: (design) => sink.put(design),
      putSettings: (settings, ids) => sink.putSettings(settings, ids),
      held: async (id) => {
        const held = await sink.held(id);
        if (held === null || held === 'damaged') return held;
        return { pattern: held.pattern, pictures: await bytesOf(held.pictures) };
      },
    },
    progress,
  );
}
