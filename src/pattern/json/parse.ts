import { done, failed, type Result } from '#base/result.ts';
import { findJsonFault, lineAndColumn } from './fault.ts';
import { measureJson } from './measure.ts';

/** Most that a text may hold before it is refused unparsed. */
export interface JsonLimits {
  readonly length: number;
  readonly values: number;
  readonly depth: number;
}

/** What there is too much of: the file as it lies on the disk, its characters, its values, its nesting. */
export type TooLarge = 'bytes' | 'text' | 'values' | 'depth';

export type JsonTrouble =
  | {
      readonly kind: 'too-large';
      readonly what: TooLarge;
      readonly size: number;
      readonly limit: number;
    }
  /** `found` is the character at the place, or null where the text ends too early. Line and column count from 1. */
  | {
      readonly kind: 'not-json';
      readonly line: number;
      readonly column: number;
      readonly found: string | null;
    };

/** JSON text to a plain value, in bounded time and memory. A byte order mark in front is passed over (RFC 8259, 8.1). */
export function parseJson(text: string, limits: JsonLimits): Result<unknown, JsonTrouble> {
  if (text.length > limits.length) return tooLarge('text', text.length, limits.length);
  const { depth, values } = measureJson(text);
  if (depth > limits.depth) return tooLarge('depth', depth, limits.depth);
  if (values > limits.values) return tooLarge('values', values, limits.values);
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    return done(JSON.parse(body) as unknown);
  } catch {
    const offset = findJsonFault(body) ?? body.length;
    const found = offset < body.length ? String.fromCodePoint(body.codePointAt(offset)!) : null;
    return failed({ kind: 'not-json', ...lineAndColumn(body, offset), found });
  }
}

const tooLarge = (what: TooLarge, size: number, limit: number) =>
  failed({ kind: 'too-large', what, size, limit } as const);
