import type { LibraryEntry } from './entry.ts';

export const breakwater: LibraryEntry = {
  name: 'breakwater',
  title: 'Breakwater, a scalloped edging with a zigzag trail',
  about: {
    name: 'Breakwater',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'The trail in half stitch goes with the scallops; a diamond lies in each of its bends.',
  },
  recipe: {
    kind: 'strip',
    spacing: 4.5,
    angle: 50,
    repeats: 3,
    length: 8,
    width: 14,
    ground: 'plain',
    footside: { kind: 'passives', share: 0.4 },
    headside: { kind: 'scallops', pins: 17, depthShare: 0.22, stitch: 'cloth' },
    areas: [
      { shape: 'trail', column: 2, row: 0, size: 2, stitch: 'half' },
      { shape: 'diamond', column: 5, row: 8, size: 3, stitch: 'cloth', gimp: true },
    ],
  },
};
