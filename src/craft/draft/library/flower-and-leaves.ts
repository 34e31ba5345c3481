import type { LibraryEntry } from './entry.ts';

export const flowerAndLeaves: LibraryEntry = {
  name: 'flower-and-leaves',
  title: 'Flower and leaves, a panel in point ground with honeycomb',
  about: {
    name: 'Flower and leaves',
    maker: 'Quayside Workshop',
    source: 'Drafted for this gallery',
    permission: 'Free to copy',
    lace: 'Point ground',
  },
  recipe: {
    kind: 'motif',
    spacing: 3,
    angle: 60,
    ground: 'plain',
    width: 72.7,
    length: 33,
    repeats: 1,
    footside: 'both',
    motifs: [
      {
        at: { x: 36.4, y: 33 },
        turn: 0,
        mirrored: false,
        outline: flower(5, 9, 21),
        filling: { kind: 'ground', ground: 'honeycomb' },
        gimp: true,
      },
      leaf(22, 74, -40, false),
      leaf(50.8, 74, 40, true),
    ],
  },
};

function flower(petals: number, cleft: number, tip: number) {
  const points = [];
  for (let k = 0; k < petals; k++) {
    const at = (turn: number, radius: number) => {
      const a = ((k + turn) / petals) * 2 * Math.PI - Math.PI / 2;
      return { x: Math.round(radius * Math.cos(a) * 10) / 10, y: Math.round(radius * Math.sin(a) * 10) / 10 };
    };
    points.push(
      { ...at(-0.5, cleft), sharp: true },
      at(-0.36, tip * 0.8),
      at(-0.18, tip * 0.98),
      at(0, tip),
      at(0.18, tip * 0.98),
      at(0.36, tip * 0.8),
    );
  }
  return points;
}

function leaf(x: number, y: number, turn: number, mirrored: boolean) {
  return {
    at: { x, y },
    turn,
    mirrored,
    outline: [
      { x: 0, y: 18, sharp: true },
      { x: -5.5, y: 9 },
      { x: -7, y: 1 },
      { x: -5, y: -9 },
      { x: 0, y: -18, sharp: true },
      { x: 5, y: -9 },
      { x: 7, y: 1 },
      { x: 5.5, y: 9 },
    ],
    filling: { kind: 'stitch' as const, stitch: 'cloth' as const },
    gimp: true,
  };
}
