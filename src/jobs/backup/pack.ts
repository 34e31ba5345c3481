import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { Progress } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import { CONTAINER_ENDING, writeContainer } from '#pattern/container/container.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import { encodeUtf8 } from '#pattern/container/utf8.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { BackupSettings, WholeDesign } from './backup.ts';
import {
  BACKUP_MANIFEST,
  BACKUP_NOTE,
  type BackupFile,
  type DesignInBackup,
  MOST_BACKUP_BYTES,
  writeBackupManifest,
} from './manifest.ts';
import { writeSteps } from './steps.ts';
import type { BackupTrouble } from './trouble.ts';

/** Where a backup comes from, a design at a time, so that a large shelf need not lie in memory at once. */
export interface BackupSource {
  /** When it is made, and how many designs there are. */
  begin(): Promise<{ readonly made: number; readonly count: number }>;
  /** Null where nothing of the design can be read. */
  design(index: number): Promise<WholeDesign | null>;
  settings(): Promise<BackupSettings>;
}

export interface Packed {
  /** How many designs went in. */
  readonly count: number;
  /** Names of designs that could not be put in. */
  readonly left: readonly string[];
}

const NOTE = 'Bring this file back with Pinlight: on the shelf, choose "Bring back a backup".\n';

/** Writes a backup, a piece at a time. */
export async function packBackup(
  source: BackupSource,
  write: (piece: Uint8Array) => void,
  progress: Progress,
): Promise<Result<Packed, BackupTrouble>> {
  const { made, count } = await source.begin();
  let size = 0;
  const zip = new Zip((error, piece) => {
    if (error) throw error;
    size += piece.length;
    write(piece);
  });
  const put = (entry: string, bytes: Uint8Array, packed: boolean): BackupFile => {
    const file = packed ? new ZipDeflate(entry, { level: 6 }) : new ZipPassThrough(entry);
    file.mtime = made;
    zip.add(file);
    file.push(bytes as Uint8Array<ArrayBuffer>, true);
    return { entry, size: bytes.length, sha256: sha256Hex(bytes) };
  };
  put(BACKUP_NOTE, encodeUtf8(NOTE), false);
  const designs: DesignInBackup[] = [];
  const left: string[] = [];
  for (let index = 0; index < count; index++) {
    progress('pack', index / count);
    const design = await source.design(index);
    if (!design) continue;
    if (size > MOST_BACKUP_BYTES) return failed({ kind: 'shelf-too-large' });
    try {
      const start = `design-${index + 1}`;
      // Everything is written out before any of it goes in, so that no half of a design does.
      const container = writeContainer(design);
      const versions = design.versions.map(({ saved, pattern }) => ({
        saved,
        bytes: encodeUtf8(writePattern(pattern)),
      }));
      const steps = writeSteps(design);
      const { id, name, created, changed } = design;
      designs.push({
        ...{ id, name, created, changed },
        file: put(start + CONTAINER_ENDING, container, false),
        versions: versions.map(({ saved, bytes }, number) => ({
          saved,
          file: put(`${start}-version-${number + 1}.json`, bytes, true),
        })),
        steps: { done: steps.done, file: put(`${start}-steps.jsonl`, encodeUtf8(steps.text), true) },
      });
    } catch {
      left.push(design.name);
    }
  }
  const settings = put('settings.json', encodeUtf8(JSON.stringify(await source.settings())), true);
  put(BACKUP_MANIFEST, encodeUtf8(writeBackupManifest({ made, designs, settings })), true);
  zip.end();
  progress('pack', 1);
  return size > MOST_BACKUP_BYTES
    ? failed({ kind: 'shelf-too-large' })
    : done({ count: designs.length, left });
}
