import type { LibraryEntry } from './entry.ts';

export const capstanFan: LibraryEntry = {
  name: 'capstan-fan',
  title: 'Capstan fan, a narrow edging on 45 degrees',
  about: {
    name: 'Capstan fan',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'Fans in cloth stitch; a passive pair runs along the footside.',
  },
  recipe: {
    kind: 'strip',
    spacing: 5,
    angle: 45,
    repeats: 6,
    length: 4,
    width: 4,
    ground: 'plain',
    footside: { kind: 'passives', share: 0.4 },
    headside: { kind: 'fans', pins: 9, stitch: 'cloth' },
  },
};
