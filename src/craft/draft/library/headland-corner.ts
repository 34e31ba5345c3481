import type { LibraryEntry } from './entry.ts';

export const headlandCorner: LibraryEntry = {
  name: 'headland-corner',
  title: 'Headland, a point-ground corner on 60 degrees',
  about: {
    name: 'Headland',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Point ground',
    notes: 'The mitre line is worked from the inner corner outwards; its pins serve both sides.',
  },
  recipe: {
    kind: 'frame',
    part: 'corner',
    across: 4,
    down: 4,
    spacing: 3,
    angle: 60,
    length: 8,
    width: 12,
    headside: { kind: 'scallops', pins: 11, stitch: 'cloth' },
    tolerance: 0.3,
  },
};
