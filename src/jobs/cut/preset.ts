import { done, failed, type Result } from '#base/result.ts';
import { type CuttingPreset, cuttingPresetSchema } from '#paper/cut/preset.ts';
import { decodeUtf8 } from '#pattern/container/utf8.ts';
import { type JsonTrouble, parseJson } from '#pattern/json/parse.ts';
import type { PresetTrouble } from '../trouble.ts';

const LIMITS = { length: 100_000, values: 1000, depth: 6 };

/** A shop's preset from the bytes of its file. */
export function readPreset(bytes: Uint8Array): Result<CuttingPreset, PresetTrouble | JsonTrouble> {
  const text = decodeUtf8(bytes);
  if (text === null) return failed({ kind: 'not-a-preset', where: '' });
  const parsed = parseJson(text, LIMITS);
  if (!parsed.ok) return parsed;
  const shaped = cuttingPresetSchema.safeParse(parsed.value);
  if (shaped.success) return done(shaped.data);
  return failed({ kind: 'not-a-preset', where: shaped.error.issues[0]?.path.join('.') ?? '' });
}
