import type { YarnSystem } from './system.ts';

/**
 * Why the notation of a thread cannot be understood. `text` is what was typed, `works` are notations that could have
 * been meant and would be understood. Put into sentences by `#jobs/words/yarn.ts`.
 */
export type YarnTrouble =
  | { readonly kind: 'empty' }
  | { readonly kind: 'no-number'; readonly text: string }
  /** A number, but no word that says in which system. */
  | { readonly kind: 'no-system'; readonly text: string; readonly works: readonly string[] }
  | { readonly kind: 'unknown-word'; readonly text: string; readonly word: string }
  | {
      readonly kind: 'two-systems';
      readonly text: string;
      readonly systems: readonly [YarnSystem, YarnSystem];
    }
  /** A point and a comma, or either twice, in one number. */
  | { readonly kind: 'two-marks'; readonly number: string }
  /** 150/48 dtex: 48 strands or 48 filaments, nobody can tell. */
  | { readonly kind: 'stroke'; readonly text: string; readonly works: readonly string[] }
  /** A ticket number, of which there are two kinds. */
  | { readonly kind: 'which-ticket'; readonly works: readonly string[] }
  /** A ticket counts the whole thread, so that strands behind it say nothing. */
  | { readonly kind: 'ticket-strands'; readonly works: readonly string[] }
  | { readonly kind: 'not-a-fold'; readonly text: string }
  | { readonly kind: 'strands-out-of-range'; readonly strands: number; readonly most: number }
  | { readonly kind: 'tex-out-of-range'; readonly tex: number; readonly least: number; readonly most: number }
  /** The label tells strands and the whole thread, and they cannot both be right. */
  | { readonly kind: 'resultant-disagrees'; readonly told: number; readonly reckoned: number };
