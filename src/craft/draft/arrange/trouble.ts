/** Why patterns cannot be arranged as asked; the jobs put each into words. */
export type ArrangeTrouble =
  /** One is in millimetres, the other in pixels of a picture. */
  | { readonly kind: 'units-differ' }
  | { readonly kind: 'too-many-pins'; readonly given: number; readonly most: number }
  /** A repeat that goes nowhere would put every pin on itself. */
  | { readonly kind: 'no-step' }
  /** An angle is to the footside, and no straight run of that role is there. */
  | { readonly kind: 'no-footside' }
  /** It has a footside on more sides than one, which no one map can press. */
  | { readonly kind: 'footside-turns' };
