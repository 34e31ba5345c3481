import type { z } from 'zod';
import { done, failed, type Result } from '#base/result.ts';
import type { ListName, Path, PatternTrouble } from '../trouble.ts';
import { MAX_AREAS, MAX_MARKS, MAX_PATH, MAX_PINS, MAX_RUNS } from './limits.ts';
import {
  areaSchema,
  fileSchema,
  idSchema,
  markSchema,
  type PaperFile,
  type PatternFile,
  paperSchema,
  pinSchema,
  pointSchema,
  runSchema,
} from './schema.ts';
import { troubleOfIssue } from './shape-trouble.ts';
import { isObject, type JsonObject } from './upgrades.ts';

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
  const { paper, ...shell }: Record<string, unknown> = file;
  const checked: Record<string, unknown> = {};
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
    checked[name] = records;
    shell[name] = [];
  }
  const rest = parsePart(fileSchema, shell, []);
  if (!rest.ok) return rest;
  if (paper === undefined) return done({ ...rest.value, ...checked });
  const read = parsePaper(paper, ['paper']);
  return read.ok ? done({ ...rest.value, ...checked, paper: read.value }) : read;
}

/** One value against one schema; the first fault is told, with `path` in front of its own. */
export function parsePart<Value>(
  schema: z.ZodType<Value>,
  value: unknown,
  path: Path,
): Result<Value, PatternTrouble> {
  const long = overlong(value, path);
  if (long) return failed(long);
  const parsed = schema.safeParse(value);
  return parsed.success ? done(parsed.data) : failed(troubleOfIssue(parsed.error.issues[0]!, value, path));
}

/** The paper's picture, whose places of pins are as many as the pins and are checked one by one. */
export function parsePaper(paper: unknown, path: Path): Result<PaperFile, PatternTrouble> {
  if (!isObject(paper) || !isObject(paper.stood)) return parsePart(paperSchema, paper, path);
  const { stood, ...rest } = paper;
  const read = parsePart(paperSchema, rest, path);
  if (!read.ok) return read;
  const places: Record<string, { x: number; y: number }> = {};
  for (const [pin, place] of Object.entries(stood)) {
    const id = parsePart(idSchema, pin, [...path, 'stood', pin]);
    if (!id.ok) return id;
    const point = parsePart(pointSchema, place, [...path, 'stood', pin]);
    if (!point.ok) return point;
    places[id.value] = point.value;
  }
  return done({ ...read.value, stood: places });
}

function overlong(value: unknown, path: Path): PatternTrouble | null {
  if (!isObject(value)) return null;
  for (const key of Object.keys(value)) {
    const item = value[key];
    if (Array.isArray(item) && item.length > MAX_PATH) {
      return { kind: 'too-many', path: [...path, key], count: item.length, limit: MAX_PATH };
    }
  }
  return null;
}
