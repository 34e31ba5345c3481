import type { PatternTrouble } from '../trouble.ts';

/** Why a container cannot be opened. Put into sentences by `#jobs/words/container.ts`. */
export type ContainerTrouble =
  | { readonly kind: 'damaged-zip' }
  | { readonly kind: 'too-many-entries'; readonly limit: number }
  | { readonly kind: 'entry-too-large'; readonly name: string; readonly size: number; readonly limit: number }
  /** A name with folders in it, or with anything but letters, digits and . _ - */
  | { readonly kind: 'bad-entry-name'; readonly name: string }
  | { readonly kind: 'duplicate-entry'; readonly name: string }
  | { readonly kind: 'missing-entry'; readonly name: string }
  | { readonly kind: 'unlisted-entry'; readonly name: string }
  /** Not the bytes that were put in. */
  | { readonly kind: 'damaged-entry'; readonly name: string }
  /** Whole, but not the picture from which the pattern was traced. */
  | { readonly kind: 'other-picture'; readonly name: string }
  | { readonly kind: 'in-entry'; readonly name: string; readonly trouble: PatternTrouble };
