import type { LibraryEntry } from './entry.ts';

export const harbourLights: LibraryEntry = {
  name: 'harbour-lights',
  title: 'Harbour lights, an insertion with diamonds and spiders',
  about: {
    name: 'Harbour lights',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'Diamonds in cloth stitch inside a gimp, spiders between them; a footside on both edges.',
  },
  recipe: {
    kind: 'strip',
    spacing: 5,
    angle: 45,
    repeats: 3,
    length: 8,
    width: 16,
    ground: 'plain',
    footside: { kind: 'passives', share: 0.4 },
    headside: { kind: 'footside' },
    areas: [
      { shape: 'diamond', column: 8, row: 8, size: 4, stitch: 'cloth', gimp: true },
      { shape: 'spider', column: 5, row: 0, size: 3 },
      { shape: 'spider', column: 11, row: 0, size: 3 },
    ],
  },
};
