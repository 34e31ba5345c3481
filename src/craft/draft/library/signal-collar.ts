import type { LibraryEntry } from './entry.ts';

export const signalCollar: LibraryEntry = {
  name: 'signal-collar',
  title: 'Signal, a collar',
  about: {
    name: 'Signal',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'Part of a ring: the footside lies inside, at the neck.',
  },
  recipe: {
    kind: 'ring',
    spacing: 4,
    angle: 45,
    repeats: 10,
    length: 8,
    width: 14,
    ground: 'plain',
    footside: { kind: 'passives', share: 0.7 },
    headside: { kind: 'scallops', pins: 15, stitch: 'cloth' },
    areas: [
      { shape: 'diamond', column: 9, row: 8, size: 3, stitch: 'cloth', gimp: true },
      { shape: 'spider', column: 7, row: 0, size: 3 },
    ],
    foot: 'inside',
    arc: 240,
  },
};
