import { done, failed, type Result } from '#base/result.ts';
import { type PrinterProfile, printerProfileSchema } from '#paper/calibrate/profile.ts';
import { decodeUtf8 } from '#pattern/container/utf8.ts';
import type { JsonTrouble } from '#pattern/json/parse.ts';
import { parseJson } from '#pattern/json/parse.ts';
import type { ProfileTrouble } from '../trouble.ts';

const LIMITS = { length: 10_000, values: 100, depth: 4 };

/** A printer's profile from the bytes of its file. */
export function readProfile(bytes: Uint8Array): Result<PrinterProfile, ProfileTrouble | JsonTrouble> {
  const text = decodeUtf8(bytes);
  if (text === null) return failed({ kind: 'not-a-profile' });
  const parsed = parseJson(text, LIMITS);
  if (!parsed.ok) return parsed;
  const shaped = printerProfileSchema.safeParse(parsed.value);
  return shaped.success ? done(shaped.data) : failed({ kind: 'not-a-profile' });
}

export const writeProfile = (profile: PrinterProfile): string => `${JSON.stringify(profile, null, 2)}\n`;
