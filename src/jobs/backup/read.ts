import { failed, type Result } from '#base/result.ts';
import { readContainer } from '#pattern/container/container.ts';
import { isZip } from '#pattern/container/open.ts';
import { sha256Hex } from '#pattern/container/sha256.ts';
import type { ContainerTrouble } from '#pattern/container/trouble.ts';
import { decodeUtf8, encodeUtf8 } from '#pattern/container/utf8.ts';
import { listEntries, MAX_TOTAL_BYTES, readEntry } from '#pattern/container/zip.ts';
import { readPattern } from '#pattern/file/read.ts';
import { isObject } from '#pattern/file/upgrades.ts';
import { parseJson } from '#pattern/json/parse.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { BackupSettings, WholeDesign } from './backup.ts';
import {
  BACKUP_MANIFEST,
  BACKUP_NOTE,
  type BackupFile,
  type BackupManifest,
  type DesignInBackup,
  MOST_BACKUP_BYTES,
  MOST_BACKUP_ENTRIES,
  readBackupManifest,
} from './manifest.ts';
import { NO_STEPS, readSteps, type Steps } from './steps.ts';
import type { BackupTrouble } from './trouble.ts';

const LIMITS = {
  entries: MOST_BACKUP_ENTRIES,
  // A container holds its pictures as they are, and little beside them.
  entryBytes: MAX_TOTAL_BYTES + 2 ** 20,
  totalBytes: 2 * MOST_BACKUP_BYTES,
};

/** What a backup says that it holds. Nothing is unpacked but its list of contents. */
export function listBackup(bytes: Uint8Array): Result<BackupManifest, BackupTrouble> {
  if (!isZip(bytes)) return failed({ kind: 'not-a-backup' });
  if (bytes.length > MOST_BACKUP_BYTES) return failed({ kind: 'backup-too-large' });
  const listed = listEntries(bytes, LIMITS);
  if (!listed.ok && TOO_LARGE.has(listed.trouble.kind)) return failed({ kind: 'backup-too-large' });
  if (!listed.ok || !listed.value.has(BACKUP_MANIFEST)) {
    return failed({ kind: isBackup(bytes) ? 'backup-damaged' : 'not-a-backup' });
  }
  const manifest = readEntry(bytes, BACKUP_MANIFEST);
  return manifest.ok ? readBackupManifest(manifest.value) : failed({ kind: 'backup-damaged' });
}

const TOO_LARGE: ReadonlySet<ContainerTrouble['kind']> = new Set(['too-many-entries', 'entry-too-large']);

/**
 * A design of a backup with its steps, where they are whole, and those of its versions that are; or null where its
 * pattern or a picture is damaged.
 */
export function designOf(
  bytes: Uint8Array,
  { file, versions, steps, ...facts }: DesignInBackup,
): (WholeDesign & { readonly lostVersions: number; readonly lostSteps: boolean }) | null {
  const container = fileOf(bytes, file);
  const opened = container && readContainer(container);
  if (!opened?.ok) return null;
  const whole = versions.flatMap(({ saved, file: version }) => {
    const text = decodeUtf8(fileOf(bytes, version) ?? NO_BYTES);
    const read = text ? readPattern(text) : null;
    return read?.ok ? [{ saved, pattern: read.value }] : [];
  });
  const led = steps ? stepsOf(bytes, steps, opened.value.pattern) : NO_STEPS;
  return {
    ...facts,
    ...opened.value,
    ...(led ?? NO_STEPS),
    versions: whole,
    lostVersions: versions.length - whole.length,
    lostSteps: led === null,
  };
}

function stepsOf(
  bytes: Uint8Array,
  { done, file }: NonNullable<DesignInBackup['steps']>,
  pattern: Pattern,
): Steps | null {
  const read = fileOf(bytes, file);
  const text = read && decodeUtf8(read);
  return text === null ? null : readSteps(text, done, pattern);
}

const NO_BYTES = new Uint8Array();

/** The settings of a backup, or null where they are damaged. */
export function settingsOf(bytes: Uint8Array, { settings }: BackupManifest): BackupSettings | null {
  const text = decodeUtf8(fileOf(bytes, settings) ?? NO_BYTES);
  const parsed = text ? parseJson(text, { length: 20_000_000, values: 2_000_000, depth: 32 }) : null;
  return parsed?.ok && isObject(parsed.value) ? parsed.value : null;
}

function fileOf(bytes: Uint8Array, { entry, size, sha256 }: BackupFile): Uint8Array | null {
  const read = readEntry(bytes, entry);
  return read.ok && read.value.length === size && sha256Hex(read.value) === sha256 ? read.value : null;
}

/** Whether the bytes begin as a backup of ours does; they may be cut off. */
export function isBackup(bytes: Uint8Array): boolean {
  const name = encodeUtf8(BACKUP_NOTE);
  // The name of a zip's first entry stands after 30 bytes of figures (APPNOTE.TXT, 4.3.7).
  return isZip(bytes) && name.every((letter, index) => bytes[30 + index] === letter);
}
