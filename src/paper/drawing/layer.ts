import type { Role } from './mark.ts';

/** The layers that a reader of a PDF or SVG can show and hide, in the order in which they are drawn. */
export const layers = ['picture', 'tints', 'markings', 'notes', 'holes'] as const;

export type Layer = (typeof layers)[number];

/** What a layer is called in the files. */
export const layerNames: Readonly<Record<Layer, string>> = {
  picture: 'Picture of the paper',
  tints: 'Tints',
  markings: 'Markings',
  notes: 'Notes and rulers',
  holes: 'Holes',
};

export function layerOf(role: Role): Layer {
  switch (role) {
    case 'picture':
      return 'picture';
    case 'tint':
      return 'tints';
    case 'marking':
    case 'gimp':
      return 'markings';
    case 'outline':
    case 'note':
    case 'guide':
      return 'notes';
    case 'hole':
      return 'holes';
  }
}
