import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import type { PatternWithPictures } from '#pattern/container/container.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import { encodeUtf8 } from '#pattern/container/utf8.ts';
import { type BackupSettings, contentHash, type WholeDesign } from './backup.ts';
import { designOf, listBackup, settingsOf } from './read.ts';
import type { BackupTrouble } from './trouble.ts';

/** Where a backup is brought back to. It is only ever added to. */
export interface BackupSink {
  /** The design of that id as it is here: null where there is none, 'damaged' where it cannot be read. */
  held(id: string): Promise<PatternWithPictures | 'damaged' | null>;
  /** Puts a new design there, whole or not at all. */
  put(design: WholeDesign): Promise<void>;
  /** Adds settings that are not there yet; `ids` says which designs came under another id. */
  putSettings(settings: BackupSettings, ids: ReadonlyMap<string, string>): Promise<void>;
}

/** What came of a backup: names of designs. */
export interface Restored {
  readonly came: readonly string[];
  /** Here already, with the same content. */
  readonly same: readonly string[];
  /** Other than what is here; they came beside it, under the names given here. */
  readonly copies: readonly string[];
  /** Damaged in the backup; nothing of them came. */
  readonly damaged: readonly string[];
  /** Earlier versions that were damaged in the backup. */
  readonly lostVersions: number;
  /** Patterns that came whole, but whose steps were damaged in the backup. */
  readonly lostSteps: number;
  readonly settings: 'came' | 'damaged';
}

/** Brings a backup back. Nothing that is there is changed; a design comes whole or not at all. */
export async function restoreBackup(
  bytes: Uint8Array,
  sink: BackupSink,
  progress: Progress,
): Promise<Result<Restored, BackupTrouble>> {
  const listed = listBackup(bytes);
  if (!listed.ok) return listed;
  const { designs } = listed.value;
  const told = {
    came: [] as string[],
    same: [] as string[],
    copies: [] as string[],
    damaged: [] as string[],
  };
  let lostVersions = 0;
  let lostSteps = 0;
  const ids = new Map<string, string>();
  for (const [index, entry] of designs.entries()) {
    progress('restore', index / designs.length);
    const design = designOf(bytes, entry);
    if (!design) {
      told.damaged.push(entry.name);
      continue;
    }
    const place = await placeFor(design, sink);
    if (place.held) told.same.push(entry.name);
    else {
      const copy = place.id !== entry.id;
      const name = copy ? `${entry.name} (from the backup)` : entry.name;
      await sink.put({ ...design, id: place.id, name });
      lostVersions += design.lostVersions;
      if (design.lostSteps) lostSteps++;
      (copy ? told.copies : told.came).push(name);
    }
    if (place.id !== entry.id) ids.set(entry.id, place.id);
  }
  const settings = settingsOf(bytes, listed.value);
  if (settings) await sink.putSettings(settings, ids);
  progress('restore', 1);
  return done({ ...told, lostVersions, lostSteps, settings: settings ? 'came' : 'damaged' });
}

/**
 * The id under which a design comes, and whether it is held there already. Where its own is taken by other content, the
 * next is found from that content, so that bringing the same backup back twice makes no second copy.
 */
async function placeFor(
  design: WholeDesign,
  sink: BackupSink,
): Promise<{ readonly id: string; readonly held: boolean }> {
  const hash = contentHash(design);
  for (let { id } = design; ; id = sha256Hex(encodeUtf8(`${id} ${hash}`)).slice(0, 32)) {
    const held = await sink.held(id);
    if (held === null) return { id, held: false };
    if (held !== 'damaged' && hashOrNull(held) === hash) return { id, held: true };
  }
}

/** Null where the pattern in the store could not be written to a file: then it is not the same. */
function hashOrNull(held: PatternWithPictures): string | null {
  try {
    return contentHash(held);
  } catch {
    return null;
  }
}
