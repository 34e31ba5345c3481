import { done, failed, type Result } from '#base/result.ts';
import type { PatternTrouble } from '../trouble.ts';
import { FORMAT, VERSION } from './schema.ts';

export type JsonObject = { readonly [key: string]: unknown };

/**
 * How files grow up: `upgrades[n]` makes a file of version n into one of version n + 1, on plain JSON that has not
 * been checked yet. A new version adds a function at the end; none is ever changed.
 */
export const upgrades: readonly ((file: JsonObject) => JsonObject)[] = [markVersion1, markVersion2];

/** A parsed file brought to the present version, or why it cannot be. */
export function upgrade(file: unknown): Result<JsonObject, PatternTrouble> {
  if (!isObject(file)) return failed({ kind: 'not-a-pattern', format: null });
  const { format, version = 0 } = file;
  if (format !== undefined && format !== FORMAT) {
    return failed({ kind: 'not-a-pattern', format: String(JSON.stringify(format)).slice(0, 80) });
  }
  const newer = newerVersion(file, VERSION);
  if (newer !== null) return failed({ kind: 'newer-version', version: newer, newest: VERSION });
  if (typeof version !== 'number' || !Number.isInteger(version) || (version < 1 && 'version' in file)) {
    return failed({ kind: 'unknown-version', version: String(JSON.stringify(version)).slice(0, 80) });
  }
  return done(upgrades.slice(version).reduce((old, step) => step(old), file));
}

/** The version that a file gives, where it is newer than `newest`; null where it is not. */
export function newerVersion(file: unknown, newest: number): number | null {
  const version = isObject(file) ? file.version : null;
  return typeof version === 'number' && Number.isInteger(version) && version > newest ? version : null;
}

/** Version 0 is the bare file without a mark, as a person or another program writes it by hand. */
function markVersion1(file: JsonObject): JsonObject {
  return { ...file, format: FORMAT, version: 1 };
}

/** Version 2 brought the recipe, which a file of version 1 lacks. */
function markVersion2(file: JsonObject): JsonObject {
  return { ...file, version: 2 };
}

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
