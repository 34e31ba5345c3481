import type { GroundName } from '#pattern/recipe/ground.ts';
import type { LibraryEntry } from './entry.ts';

export const windowSampler: LibraryEntry = {
  name: 'window-sampler',
  title: 'Window sampler, four grounds in a plain one',
  about: {
    name: 'Window sampler',
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
    length: 45,
    repeats: 1,
    footside: 'both',
    motifs: [window(30, 'doubled'), window(85, 'honeycomb'), window(140, 'rose'), window(195, 'four-pin')],
  },
};

function window(y: number, ground: GroundName) {
  return {
    at: { x: 35, y },
    turn: 0,
    mirrored: false,
    outline: [
      { x: 0, y: -23 },
      { x: 17, y: -16 },
      { x: 26, y: 0 },
      { x: 17, y: 16 },
      { x: 0, y: 23 },
      { x: -17, y: 16 },
      { x: -26, y: 0 },
      { x: -17, y: -16 },
    ],
    filling: { kind: 'ground' as const, ground },
    gimp: true,
  };
}
