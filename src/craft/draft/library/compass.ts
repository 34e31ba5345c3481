import type { LibraryEntry } from './entry.ts';

export const compass: LibraryEntry = {
  name: 'compass',
  title: 'Compass, a round mat with bands of cloth stitch',
  about: {
    name: 'Compass',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'Begun in the middle, round after round; each band takes twice as many pins as the one inside it.',
  },
  recipe: {
    kind: 'mat',
    sectors: 16,
    spacing: 3.2,
    angle: 45,
    centre: { kind: 'ring', pins: 8, radius: 3.4, stitch: 'cloth' },
    rounds: [
      { width: 4, length: 1, ground: 'plain', band: { width: 1, doubled: true, stitch: 'cloth' } },
      {
        width: 6,
        length: 4,
        ground: 'plain',
        areas: [{ shape: 'diamond', column: 3, row: 4, size: 1, stitch: 'cloth' }],
        band: { width: 2, doubled: true, stitch: 'cloth' },
      },
    ],
    outer: {
      width: 8,
      length: 4,
      ground: 'plain',
      areas: [{ shape: 'diamond', column: 6, row: 0, size: 2, stitch: 'half' }],
      headside: { kind: 'fans', pins: 9, stitch: 'cloth' },
      picots: false,
    },
  },
};
