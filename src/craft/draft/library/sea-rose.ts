import type { LibraryEntry } from './entry.ts';

export const seaRose: LibraryEntry = {
  name: 'sea-rose',
  title: 'Sea rose, a pointed edging with rose ground',
  about: {
    name: 'Sea rose',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'Rose ground between columns of plain ground; a diamond in whole stitch in every point.',
  },
  recipe: {
    kind: 'strip',
    spacing: 5,
    angle: 45,
    repeats: 4,
    length: 6,
    width: 10,
    ground: 'rose',
    footside: { kind: 'passives', share: 0.4 },
    headside: { kind: 'points' },
    areas: [{ shape: 'diamond', column: 10, row: 6, size: 4, stitch: 'whole', gimp: true }],
  },
};
