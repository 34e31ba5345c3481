import type { LibraryEntry } from './entry.ts';

export const tideline: LibraryEntry = {
  name: 'tideline',
  title: 'Tideline, a point-ground edging on 60 degrees with a cloth trail',
  about: {
    name: 'Tideline',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Point ground',
    notes: 'The trail is worked in cloth stitch between two gimps; the scallops in half stitch.',
  },
  recipe: {
    kind: 'strip',
    spacing: 3,
    angle: 60,
    repeats: 3,
    length: 12,
    width: 20,
    ground: 'plain',
    footside: { kind: 'passives', share: 0.5 },
    headside: { kind: 'scallops', pins: 21, depthShare: 0.17, stitch: 'half' },
    areas: [{ shape: 'trail', column: 4, row: 0, size: 1, stitch: 'cloth', gimp: true }],
  },
};
