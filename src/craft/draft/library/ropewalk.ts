import type { LibraryEntry } from './entry.ts';

export const ropewalk: LibraryEntry = {
  name: 'ropewalk',
  title: 'Ropewalk, a round edging with fans outside',
  about: {
    name: 'Ropewalk',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes:
      'The footside lies inside and is sewn round a cloth; the fans in cloth stitch, the diamonds in half stitch.',
  },
  recipe: {
    kind: 'ring',
    spacing: 4,
    angle: 45,
    repeats: 20,
    length: 6,
    width: 8,
    ground: 'plain',
    footside: { kind: 'passives', share: 0.7 },
    headside: { kind: 'fans', pins: 11, stitch: 'cloth' },
    areas: [{ shape: 'diamond', column: 7, row: 0, size: 3, stitch: 'half', gimp: true }],
    foot: 'inside',
    arc: 360,
  },
};
