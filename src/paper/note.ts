/** Something to say beside a sheet or file: never an error, never silent. `#paper/words.ts` puts it into a sentence. */
export type PaperNote =
  | { readonly kind: 'holes-nearly-touch'; readonly pins: readonly string[]; readonly closest: number }
  | { readonly kind: 'seam-near-holes'; readonly pins: readonly string[] }
  | { readonly kind: 'letters-missing'; readonly letters: readonly string[] }
  | { readonly kind: 'scale-not-proved' }
  | {
      readonly kind: 'tint-changed';
      readonly areas: readonly string[];
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: 'not-expressed'; readonly writer: string; readonly what: string }
  | { readonly kind: 'marks-without-pin'; readonly marks: readonly string[] }
  | { readonly kind: 'labels-left-out'; readonly labels: readonly string[] };
