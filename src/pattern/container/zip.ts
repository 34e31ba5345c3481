import { type UnzipFileInfo, unzipSync } from 'fflate';
import { done, failed, type Result } from '#base/result.ts';
import { ENTRY_NAME } from '../file/schema.ts';
import { MAX_ENTRIES } from './manifest.ts';
import type { ContainerTrouble } from './trouble.ts';

/** The most that one entry may unpack to, and all of them together, bytes. */
export const MAX_ENTRY_BYTES = 256 * 1024 * 1024;
export const MAX_TOTAL_BYTES = 2 * MAX_ENTRY_BYTES;

/** How much a zip may hold. */
export interface ZipLimits {
  readonly entries: number;
  /** The most that one entry may unpack to, and all of them together, bytes. */
  readonly entryBytes: number;
  readonly totalBytes: number;
}

const CONTAINER_LIMITS: ZipLimits = {
  entries: MAX_ENTRIES,
  entryBytes: MAX_ENTRY_BYTES,
  totalBytes: MAX_TOTAL_BYTES,
};

// Deflate cannot expand a byte to more than this many (zlib, "Technical Details": 1032 to 1); an entry that
// claims more lies about its size.
const MOST_PER_BYTE = 1032;

/**
 * The names in a zip, each checked together with the size it claims, without unpacking anything: a small file may
 * claim to be a large one, bear a name with folders in it, or hold a name twice.
 */
export function listEntries(
  bytes: Uint8Array,
  limits: ZipLimits = CONTAINER_LIMITS,
): Result<ReadonlySet<string>, ContainerTrouble> {
  const names = new Set<string>();
  let trouble: ContainerTrouble | null = null;
  let left = limits.totalBytes;
  const visit = (entry: UnzipFileInfo): boolean => {
    trouble = troubleOf(entry, names, { ...limits, entryBytes: Math.min(left, limits.entryBytes) });
    names.add(entry.name);
    left -= entry.originalSize;
    // The file may claim billions of entries: only throwing ends the walk through them.
    if (trouble) throw new Error(trouble.kind);
    return false;
  };
  const whole = unzipped(bytes, visit) !== null;
  if (trouble) return failed(trouble);
  return whole ? done(names) : failed({ kind: 'damaged-zip' });
}

/** The bytes of one listed entry. */
export function readEntry(bytes: Uint8Array, name: string): Result<Uint8Array, ContainerTrouble> {
  const files = unzipped(bytes, (entry) => entry.name === name);
  const file = files?.[name];
  return file ? done(file) : failed({ kind: 'damaged-entry', name });
}

function troubleOf(
  entry: UnzipFileInfo,
  names: ReadonlySet<string>,
  { entries, entryBytes: limit }: ZipLimits,
): ContainerTrouble | null {
  const { name, originalSize, size } = entry;
  if (names.size >= entries) return { kind: 'too-many-entries', limit: entries };
  if (!ENTRY_NAME.test(name)) return { kind: 'bad-entry-name', name: name.slice(0, 80) };
  if (names.has(name)) return { kind: 'duplicate-entry', name };
  if (originalSize > limit) return { kind: 'entry-too-large', name, size: originalSize, limit };
  return originalSize > MOST_PER_BYTE * size ? { kind: 'damaged-entry', name } : null;
}

function unzipped(
  bytes: Uint8Array,
  filter: (entry: UnzipFileInfo) => boolean,
): Record<string, Uint8Array> | null {
  try {
    return unzipSync(bytes, { filter });
  } catch {
    return null;
  }
}
