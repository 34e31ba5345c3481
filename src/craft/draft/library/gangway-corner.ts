import type { LibraryEntry } from './entry.ts';

export const gangwayCorner: LibraryEntry = {
  name: 'gangway-corner',
  title: 'Gangway, the corner of a handkerchief edging',
  about: {
    name: 'Gangway',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'One corner with its repeats on either side; the footside is the inner edge.',
  },
  recipe: {
    kind: 'frame',
    part: 'corner',
    across: 4,
    down: 4,
    spacing: 4,
    angle: 45,
    length: 6,
    width: 8,
    headside: { kind: 'scallops', pins: 11, stitch: 'cloth' },
    tolerance: 0.25,
  },
};
