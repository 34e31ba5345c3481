import { parseLength } from '#base/units/parse-length.ts';

/** A typed length above zero, in mm; null for anything else. */
export function lengthIn(text: string): number | null {
  const parsed = parseLength(text);
  return parsed.ok && parsed.value > 0 ? parsed.value : null;
}
