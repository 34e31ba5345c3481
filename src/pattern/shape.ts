import type { z } from 'zod';
import { done, failed, type Result } from '#base/result.ts';
import { MAX_AREAS, MAX_MARKS, MAX_PATH, MAX_PINS, MAX_RUNS } from './limits.ts';
import {
  areaSchema,
  fileSchema,
  idSchema,
  markSchema,
  type PatternFile,
  pinSchema,
  pointSchema,
  runSchema,
} from './schema.ts';
import { troubleOfIssue } from './shape-trouble.ts';
import type { ListName, Path, PatternTrouble } from './trouble.ts';
import type { JsonObject } from './upgrades.ts';

const lists: readonly { name: ListName; schema: z.ZodType; limit: number }[] = [
  { name: 'pins', schema: pinSchema, limit: MAX_PINS },
  { name: 'runs', schema: runSchema, limit: MAX_RUNS },
  { name: 'marks', schema: markSchema, limit: MAX_MARKS },
  { name: 'areas', schema: areaSchema, limit: MAX_AREAS },
];

/**
 * Checks an upgraded file against `fileSchema`, record by record: the schema library gathers every fault of what it
 * is given, and a million faulty pins at once would cost gigabytes, or its stack, before the first is told.
 */
export function checkShape(file: JsonObject): Result<PatternFile, PatternTrouble> {
  const shell: Record<string, unknown> = { ...file };
  const parsed: Record<string, unknown> = {};
  for (const { name, schema, limit } of lists) {
    const raw = file[name];
    if (!Array.isArray(raw)) continue;
    if (raw.length > limit) return failed({ kind: 'too-many', path: [name], count: raw.length, limit });
    const records: unknown[] = [];
    for (let i = 0; i < raw.length; i++) {
      const record = parsePart(schema, raw[i], [name, i]);
      if (!record.ok) return record;
      records.push(record.value);
    }
    parsed[name] = records;
    shell[name] = [];
  }
  const stood = checkStood(file);
  if (!stood.ok) return stood;
  if (stood.value) shell.paper = { ...(file.paper as object), stood: {} };

  const rest = parsePart(fileSchema, shell, []);
  if (!rest.ok) return rest;
  const whole = { ...rest.value, ...parsed };
  return done(
    stood.value && whole.paper ? { ...whole, paper: { ...whole.paper, stood: stood.value } } : whole,
  );
}

/** One value against one schema; the first fault is told, with `path` in front of its own. */
export function parsePart<Value>(
  schema: z.ZodType<Value>,
  value: unknown,
  path: Path,
): Result<Value, PatternTrouble> {
  const long = overlong(value, path);
  if (long) return failed(long);
  // jitless: no code made at run time, so that a strict content security policy holds.
  const parsed = schema.safeParse(value, { jitless: true });
  return parsed.success ? done(parsed.data) : failed(troubleOfIssue(parsed.error.issues[0]!, value, path));
}

/** The places in `paper.stood`, one for each pin, or null where there are none to check. */
function checkStood(
  file: JsonObject,
): Result<Record<string, { x: number; y: number }> | null, PatternTrouble> {
  const paper = file.paper;
  if (typeof paper !== 'object' || paper === null || !('stood' in paper)) return done(null);
  const { stood } = paper;
  if (typeof stood !== 'object' || stood === null || Array.isArray(stood)) return done(null);
  const places: Record<string, { x: number; y: number }> = {};
  for (const [pin, place] of Object.entries(stood)) {
    const path = ['paper', 'stood', pin];
    const id = parsePart(idSchema, pin, path);
    if (!id.ok) return id;
    const point = parsePart(pointSchema, place, path);
    if (!point.ok) return point;
    places[id.value] = point.value;
  }
  return done(places);
}

function overlong(value: unknown, path: Path): PatternTrouble | null {
  if (typeof value !== 'object' || value === null) return null;
  for (const key of Object.keys(value)) {
    const item = (value as JsonObject)[key];
    if (Array.isArray(item) && item.length > MAX_PATH) {
      return { kind: 'too-many', path: [...path, key], count: item.length, limit: MAX_PATH };
    }
  }
  return null;
}
