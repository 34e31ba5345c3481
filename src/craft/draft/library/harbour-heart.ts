import type { LibraryEntry } from './entry.ts';

export const harbourHeart: LibraryEntry = {
  name: 'harbour-heart',
  title: 'Harbour heart, an insertion on 45 degrees',
  about: {
    name: 'Harbour heart',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Torchon',
  },
  recipe: {
    kind: 'motif',
    spacing: 5,
    angle: 45,
    ground: 'plain',
    width: 70,
    length: 13,
    repeats: 2,
    footside: 'both',
    motifs: [
      {
        at: { x: 35, y: 30 },
        turn: 0,
        mirrored: false,
        outline: [
          { x: 0, y: -13, sharp: true },
          { x: 6, y: -20 },
          { x: 14, y: -21.5 },
          { x: 21, y: -16 },
          { x: 22, y: -7 },
          { x: 17, y: 4 },
          { x: 0, y: 24, sharp: true },
          { x: -17, y: 4 },
          { x: -22, y: -7 },
          { x: -21, y: -16 },
          { x: -14, y: -21.5 },
          { x: -6, y: -20 },
        ],
        filling: { kind: 'ground', ground: 'rose' },
        gimp: true,
      },
    ],
  },
};
