import type { LibraryEntry } from './entry.ts';

export const estuary: LibraryEntry = {
  name: 'estuary',
  title: 'Estuary, a meandering tape with a straight footside',
  about: {
    name: 'Estuary',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Tape lace',
    notes:
      'The tape winds beside a narrow straight one that is sewn to the cloth; plaits with picots and leaves join them.',
  },
  recipe: {
    kind: 'tape',
    tapes: [
      {
        course: { through: [{ x: 2, y: 0 }] },
        closed: false,
        width: 4,
        spacing: 2.4,
        groups: 2,
        start: 'square',
        finish: 'square',
        stitch: 'cloth',
        workers: true,
        footside: 'left',
      },
      {
        course: {
          through: [
            { x: 42, y: 0 },
            { x: 38.19, y: 13 },
            { x: 29, y: 14 },
            { x: 19.81, y: 15 },
            { x: 16, y: 28 },
            { x: 19.81, y: 41 },
            { x: 29, y: 42 },
            { x: 38.19, y: 43 },
          ],
        },
        closed: false,
        width: 5,
        spacing: 2.4,
        groups: 2,
        start: 'square',
        finish: 'square',
        stitch: 'cloth',
        workers: true,
      },
    ],
    joins: [],
    plaits: [
      {
        through: [
          { x: 4, y: 0 },
          { x: 39.5, y: 0 },
        ],
        picots: 4,
        loop: 1.6,
      },
    ],
    leaves: [{ from: { x: 4, y: 28 }, to: { x: 13.5, y: 28 }, width: 3 }],
    again: { kind: 'step', step: { x: 0, y: 56 }, count: 3 },
  },
};
