import { z } from 'zod';
import { done, failed, type Result } from '#base/result.ts';
import { decodeUtf8 } from '#pattern/container/utf8.ts';
import { entrySchema, hashSchema, VERSION } from '#pattern/file/schema.ts';
import { parsePart } from '#pattern/file/shape.ts';
import { isObject, newerVersion } from '#pattern/file/upgrades.ts';
import { parseJson } from '#pattern/json/parse.ts';
import { MOST_STEPS } from './steps.ts';
import type { BackupTrouble } from './trouble.ts';

/** The largest backup, bytes: what a browser can hold at once, and what a plain zip can say of itself. */
export const MOST_BACKUP_BYTES = 2 ** 31 - 1;

/** Name of the entry that says what is in a backup. */
export const BACKUP_MANIFEST = 'backup.json';

/** Name of the entry with which every backup of ours begins: it tells people what the file is. */
export const BACKUP_NOTE = 'pinlight-backup.txt';

const FORMAT = 'pinlight-backup';
/** Version 2 brought the steps of each design. */
const BACKUP_VERSION = 2;

const MOST_DESIGNS = 5_000;
const MOST_VERSIONS = 100;
/** Designs, their versions and steps, the settings and the manifest. */
export const MOST_BACKUP_ENTRIES = 50_000;

const time = z.number().min(0).max(8.64e15);

const fileSchema = z.strictObject({ entry: entrySchema, size: z.int().min(0), sha256: hashSchema });
/** One file of a backup: where it lies and what it must be. */
export type BackupFile = z.output<typeof fileSchema>;

const designSchema = z.strictObject({
  id: z.string().regex(/^[\w-]{1,64}$/),
  name: z.string().max(1_000),
  created: time,
  changed: time,
  file: fileSchema,
  versions: z.array(z.strictObject({ saved: time, file: fileSchema })).max(MOST_VERSIONS),
  steps: z.strictObject({ done: z.int().min(0).max(MOST_STEPS), file: fileSchema }).exactOptional(),
});
export type DesignInBackup = z.output<typeof designSchema>;

const manifestSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.int().min(1).max(BACKUP_VERSION),
  /** The version of the pattern format that the designs are written in. */
  patterns: z.int().min(1),
  made: time,
  designs: z.array(designSchema).max(MOST_DESIGNS),
  settings: fileSchema,
});
export type BackupManifest = z.output<typeof manifestSchema>;

export const writeBackupManifest = (
  manifest: Omit<BackupManifest, 'format' | 'version' | 'patterns'>,
): string =>
  `${JSON.stringify({ format: FORMAT, version: BACKUP_VERSION, patterns: VERSION, ...manifest }, null, 1)}\n`;

export function readBackupManifest(bytes: Uint8Array): Result<BackupManifest, BackupTrouble> {
  const text = decodeUtf8(bytes);
  const parsed = text === null ? null : parseJson(text, { length: 40_000_000, values: 1_000_000, depth: 8 });
  if (!parsed?.ok) return failed({ kind: 'backup-damaged' });
  if (!isObject(parsed.value) || parsed.value.format !== FORMAT) return failed({ kind: 'not-a-backup' });
  const { version, patterns } = parsed.value;
  for (const [given, newest] of [
    [version, BACKUP_VERSION],
    [patterns, VERSION],
  ] as const) {
    const newer = newerVersion({ version: given }, newest);
    if (newer !== null) return failed({ kind: 'backup-newer', version: newer, newest });
  }
  const read = parsePart(manifestSchema, parsed.value, []);
  return read.ok ? done(read.value) : failed({ kind: 'backup-damaged' });
}
