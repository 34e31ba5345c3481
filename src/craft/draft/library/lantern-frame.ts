import type { LibraryEntry } from './entry.ts';

export const lanternFrame: LibraryEntry = {
  name: 'lantern-frame',
  title: 'Lantern, a small square mat made as a frame',
  about: {
    name: 'Lantern',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
    notes: 'Four sides and four corners, with a spider in each corner.',
  },
  recipe: {
    kind: 'frame',
    part: 'frame',
    across: 4,
    down: 4,
    spacing: 4,
    angle: 45,
    length: 6,
    width: 10,
    headside: { kind: 'points' },
    corner: { shape: 'spider', size: 2, column: 6 },
    tolerance: 0.25,
  },
};
