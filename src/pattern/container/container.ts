import { zipSync } from 'fflate';
import { done, failed, type Result } from '#base/result.ts';
import { readPattern } from '../file/read.ts';
import { ENTRY_NAME } from '../file/schema.ts';
import { writePattern } from '../file/write.ts';
import type { Pattern } from '../pattern.ts';
import { MANIFEST, type Manifest, readManifest, writeManifest } from './manifest.ts';
import { sha256Hex } from './sha256.ts';
import type { ContainerTrouble } from './trouble.ts';
import { decodeUtf8, encodeUtf8 } from './utf8.ts';
import { listEntries, readEntry } from './zip.ts';

/** A pattern together with the pictures it speaks of, by the names of their entries. */
export interface PatternWithPictures {
  readonly pattern: Pattern;
  readonly pictures: ReadonlyMap<string, Uint8Array>;
}

/** How the name of a container ends. */
export const CONTAINER_ENDING = '.pinlight';

const PATTERN = 'pattern.json';

// Local noon of the first day that a zip can name: the same bytes in every time zone.
const NO_TIME = '1980-01-01T12:00:00';

/**
 * The bytes of a container: a zip with `manifest.json` (size and SHA-256 of every other entry), `pattern.json` and
 * the pictures, stored as they are. Equal input gives equal bytes.
 * The pattern's picture may be elsewhere, as it is beside JSON alone.
 * Throws where a picture of its name is given and is not the one whose SHA-256 the pattern gives.
 */
export function writeContainer({ pattern, pictures }: PatternWithPictures): Uint8Array {
  const entries = new Map([[PATTERN, encodeUtf8(writePattern(pattern))]]);
  for (const name of [...pictures.keys()].sort()) {
    if (!isPictureName(name)) throw new RangeError(`writeContainer: "${name}" cannot name a picture`);
    entries.set(name, pictures.get(name)!);
  }
  const { paper } = pattern;
  const picture = paper && pictures.get(paper.entry);
  if (paper && picture && sha256Hex(picture) !== paper.sha256) {
    throw new RangeError(`writeContainer: "${paper.entry}" is not the picture of the pattern`);
  }
  const zip: Parameters<typeof zipSync>[0] = { [MANIFEST]: encodeUtf8(writeManifest(entries)) };
  for (const [name, bytes] of entries) zip[name] = name === PATTERN ? bytes : [bytes, { level: 0 }];
  return zipSync(zip, { mtime: NO_TIME, level: 6 });
}

/** What a container holds, or the first thing that stops it. Nothing is unpacked before its size is known. */
export function readContainer(bytes: Uint8Array): Result<PatternWithPictures, ContainerTrouble> {
  const listed = listEntries(bytes);
  if (!listed.ok) return listed;
  const manifest = readListed(bytes, MANIFEST, listed.value);
  if (!manifest.ok) return manifest;
  const read = readManifest(manifest.value);
  if (!read.ok) return failed({ kind: 'in-entry', name: MANIFEST, trouble: read.trouble });

  const files = new Map<string, Uint8Array>();
  const missing = unmatched(listed.value, read.value);
  if (missing) return failed(missing);
  for (const { name, size, sha256 } of read.value.entries) {
    const entry = readListed(bytes, name, listed.value);
    if (!entry.ok) return entry;
    const sound = entry.value.length === size && sha256Hex(entry.value) === sha256;
    if (!sound) return failed({ kind: 'damaged-entry', name });
    files.set(name, entry.value);
  }
  return patternOf(files);
}

export const isPictureName = (name: string): boolean =>
  ENTRY_NAME.test(name) && name.length <= 64 && name !== PATTERN && name !== MANIFEST;

function readListed(
  bytes: Uint8Array,
  name: string,
  listed: ReadonlySet<string>,
): Result<Uint8Array, ContainerTrouble> {
  return listed.has(name) ? readEntry(bytes, name) : failed({ kind: 'missing-entry', name });
}

/** An entry that only the zip or only its manifest knows. */
function unmatched(listed: ReadonlySet<string>, { entries }: Manifest): ContainerTrouble | null {
  const known = new Set([MANIFEST]);
  for (const { name } of entries) {
    if (known.has(name)) return { kind: 'duplicate-entry', name };
    known.add(name);
  }
  for (const name of [PATTERN, ...known]) {
    if (!listed.has(name) || !known.has(name)) return { kind: 'missing-entry', name };
  }
  for (const name of listed) if (!known.has(name)) return { kind: 'unlisted-entry', name };
  return null;
}

function patternOf(files: Map<string, Uint8Array>): Result<PatternWithPictures, ContainerTrouble> {
  const text = decodeUtf8(files.get(PATTERN)!);
  const read = text === null ? failed({ kind: 'not-utf8' } as const) : readPattern(text);
  if (!read.ok) return failed({ kind: 'in-entry', name: PATTERN, trouble: read.trouble });
  files.delete(PATTERN);
  const { paper } = read.value;
  const picture = paper && files.get(paper.entry);
  if (paper && picture && sha256Hex(picture) !== paper.sha256) {
    return failed({ kind: 'other-picture', name: paper.entry });
  }
  return done({ pattern: read.value, pictures: files });
}
