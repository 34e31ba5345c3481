import type { LibraryEntry } from './entry.ts';

export const tidalFlower: LibraryEntry = {
  name: 'tidal-flower',
  title: 'Tidal flower, a closed tape round a ring, with plaits and leaves between',
  about: {
    name: 'Tidal flower',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Tape lace',
    notes: 'Both tapes in cloth stitch; the inside of each bend has fewer pins than the outside.',
  },
  recipe: {
    kind: 'tape',
    tapes: [
      {
        course: {
          through: [
            { x: 0, y: -48 },
            { x: 6, y: -45.56 },
            { x: 10.61, y: -39.6 },
            { x: 13.8, y: -33.31 },
            { x: 17, y: -29.44 },
            { x: 21.95, y: -28.6 },
            { x: 28.99, y: -28.99 },
            { x: 36.45, y: -27.97 },
          ],
        },
        closed: true,
        width: 5,
        spacing: 2.4,
        groups: 2,
        start: 'square',
        finish: 'square',
        stitch: 'cloth',
        workers: true,
      },
      {
        course: { through: [{ x: 0, y: -12 }] },
        closed: true,
        width: 4.4,
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
          { x: 0, y: -14.2 },
          { x: 0, y: -45.5 },
        ],
        picots: 4,
        loop: 1.6,
      },
    ],
    leaves: [{ from: { x: 7.1, y: -12.3 }, to: { x: 15.75, y: -27.28 }, width: 3 }],
    again: { kind: 'turn', centre: { x: 0, y: 0 }, count: 6 },
  },
};
