import type { LibraryEntry } from './entry.ts';

export const plainStrip: LibraryEntry = {
  name: 'plain-strip',
  title: 'Plain strip, an insertion of ground to begin with',
  about: {
    name: 'Plain strip',
    maker: 'Pinlight examples',
    source: 'Drafted from its recipe',
    permission: 'Free to copy, change and sell',
  },
  recipe: {
    kind: 'strip',
    spacing: 5,
    angle: 45,
    repeats: 6,
    length: 4,
    width: 8,
    ground: 'plain',
  },
};
