import type { JsonTrouble } from './json/parse.ts';

/** Where in a file something stands: keys and places in lists (from 0), from the outside in. */
export type Path = readonly (string | number)[];

/** Why a file cannot be opened as a pattern. Put into sentences by `#jobs/words/pattern.ts`. */
export type PatternTrouble =
  | JsonTrouble
  /** Bytes that are no text in UTF-8. */
  | { readonly kind: 'not-utf8' }
  /** JSON, but with the mark of something else, or with no object at the top. */
  | { readonly kind: 'not-a-pattern'; readonly format: string | null }
  | { readonly kind: 'newer-version'; readonly version: number; readonly newest: number }
  | { readonly kind: 'unknown-version'; readonly version: string }
  | { readonly kind: 'too-many'; readonly path: Path; readonly count: number; readonly limit: number }
  /** A number too large for any computer's arithmetic, such as 1e999. */
  | { readonly kind: 'not-finite'; readonly path: Path }
  | { readonly kind: 'wrong-shape'; readonly path: Path; readonly reason: ShapeReason }
  | {
      readonly kind: 'duplicate-id';
      readonly list: ListName;
      readonly id: string;
      /** Places in the list, from 0. */
      readonly first: number;
      readonly second: number;
    }
  | { readonly kind: 'dangling-reference'; readonly path: Path; readonly pin: string };

export type ListName = 'pins' | 'runs' | 'marks' | 'areas';

export type ShapeReason =
  | { readonly kind: 'missing' }
  | { readonly kind: 'unknown-key'; readonly key: string }
  | { readonly kind: 'wrong-type'; readonly expected: string; readonly found: string }
  | { readonly kind: 'not-one-of'; readonly allowed: readonly string[] }
  | { readonly kind: 'too-small'; readonly minimum: number }
  | { readonly kind: 'too-big'; readonly maximum: number }
  | { readonly kind: 'too-few'; readonly minimum: number }
  | { readonly kind: 'text-too-long'; readonly maximum: number }
  /** Text that does not look as its field wants it. */
  | { readonly kind: 'bad-text'; readonly wanted: 'id' | 'tint' | 'hash' | 'entry' }
  | { readonly kind: 'not-an-anchor' }
  | { readonly kind: 'zero-step' }
  | { readonly kind: 'flat-map' }
  | { readonly kind: 'other' };
