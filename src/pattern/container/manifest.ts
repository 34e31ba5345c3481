import { z } from 'zod';
import { failed, type Result } from '#base/result.ts';
import { entrySchema, hashSchema } from '../file/schema.ts';
import { parsePart } from '../file/shape.ts';
import { newerVersion } from '../file/upgrades.ts';
import { parseJson } from '../json/parse.ts';
import type { PatternTrouble } from '../trouble.ts';
import { sha256Hex } from './sha256.ts';
import { decodeUtf8 } from './utf8.ts';

/** Name of the entry that says what is in a container. */
export const MANIFEST = 'manifest.json';
/** The manifest itself, the pattern and its pictures. */
export const MAX_ENTRIES = 16;

const FORMAT = 'pinlight-container';
const VERSION = 1;

const manifestSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  entries: z
    .array(z.strictObject({ name: entrySchema, size: z.int().min(0), sha256: hashSchema }))
    .max(MAX_ENTRIES),
});
export type Manifest = z.output<typeof manifestSchema>;

export function writeManifest(entries: ReadonlyMap<string, Uint8Array>): string {
  const lines = [...entries].map(([name, bytes]) =>
    JSON.stringify({ name, size: bytes.length, sha256: sha256Hex(bytes) }),
  );
  return `{\n"format":"${FORMAT}",\n"version":${VERSION},\n"entries":[\n${lines.join(',\n')}\n]\n}\n`;
}

export function readManifest(bytes: Uint8Array): Result<Manifest, PatternTrouble> {
  const text = decodeUtf8(bytes);
  if (text === null) return failed({ kind: 'not-utf8' });
  const parsed = parseJson(text, { length: 100_000, values: 1_000, depth: 8 });
  if (!parsed.ok) return parsed;
  const newer = newerVersion(parsed.value, VERSION);
  return newer === null
    ? parsePart(manifestSchema, parsed.value, [])
    : failed({ kind: 'newer-version', version: newer, newest: VERSION });
}
