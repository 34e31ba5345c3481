/**
 * How long drafting takes and how it grows with the pins, for every kind of recipe, as a ratio to a named peer in the
 * same run: a full pass of kdbush (index all pins, ask for the neighbours of each), which is about the least that any
 * check of the pins costs. Nothing is left to chance: the recipes are fixed, and only one count of each grows.
 */
import type { Point } from '#base/geometry/point.ts';
import { draft } from '#craft/draft/draft.ts';
import { type Recipe, recipeSchema } from '#pattern/recipe/recipe.ts';
import { neighbourPass } from './peers/neighbours.ts';

const SIZES = [10_000, 30_000, 100_000] as const;
const ROUNDS = 5;

/** A recipe of each kind, larger as its count grows. */
const KINDS: readonly (readonly [name: string, recipe: (count: number) => unknown])[] = [
  ['plain strip', (repeats) => ({ kind: 'strip', spacing: 5, angle: 45, repeats, length: 10, width: 20 })],
  [
    'fans and trail',
    (repeats) => ({
      kind: 'strip',
      spacing: 5,
      angle: 52,
      repeats,
      length: 12,
      width: 24,
      headside: { kind: 'fans', pins: 13, stitch: 'cloth' },
      areas: [{ shape: 'trail', column: 6, row: 0, size: 3, stitch: 'cloth' }],
    }),
  ],
  [
    'rose ground',
    (repeats) => ({ kind: 'strip', spacing: 4, angle: 60, repeats, length: 8, width: 24, ground: 'rose' }),
  ],
  ['ring', (repeats) => ({ kind: 'ring', spacing: 5, angle: 45, repeats, length: 4, width: 12 })],
  [
    'mat',
    (sectors) => ({
      kind: 'mat',
      sectors: 12 * sectors,
      spacing: 4,
      rounds: [{ width: 4 * sectors, band: { width: 2, doubled: true } }],
      outer: { width: 6 * sectors, headside: { kind: 'straight' } },
    }),
  ],
  [
    'frame',
    (repeats) => ({
      kind: 'frame',
      part: 'frame',
      across: repeats + 4,
      down: repeats + 4,
      spacing: 5,
      angle: 45,
      length: 6,
      width: 24,
    }),
  ],
  [
    'tape',
    (count) => ({
      kind: 'tape',
      tapes: [
        {
          course: {
            through: [
              { x: 0, y: 0 },
              { x: 12, y: 20 },
            ],
          },
          width: 5,
          spacing: 2,
        },
      ],
      again: { kind: 'step', step: { x: 0, y: 40 }, count: count + 1 },
    }),
  ],
  [
    'motif ground',
    (repeats) => ({ kind: 'motif', spacing: 4, angle: 60, width: 80, length: 20, repeats, motifs: [] }),
  ],
];

const rows = KINDS.flatMap(([name, recipeOf]) => {
  const made = SIZES.flatMap((size) => {
    const recipe = sized(recipeOf, size);
    if (!recipe) return [];
    const pins = pinsOf(recipe) ?? [];
    return [
      { size: pins.length, draft: fastest(() => draft(recipe)), peer: fastest(() => neighbourPass(pins, 4)) },
    ];
  });
  return made.map((row, at) => ({ name: at === 0 ? name : '', ...row, before: made[at - 1] }));
});

console.log('kind             pins      drafted     per 100000   x neighbour pass   pins grew   time grew');
for (const { name, size, draft: ms, peer, before } of rows)
  console.log(
    [
      name.padEnd(16),
      String(size).padEnd(9),
      `${ms.toFixed(1)} ms`.padEnd(11),
      `${((ms / size) * 1e5).toFixed(0)} ms`.padEnd(12),
      (ms / peer).toFixed(2).padEnd(18),
      before ? (size / before.size).toFixed(2).padEnd(11) : '',
      before ? (ms / before.draft).toFixed(2) : '',
    ].join(' '),
  );

/** The smallest recipe of at least so many pins; null where the kind does not go so far. */
function sized(recipeOf: (count: number) => unknown, size: number): Recipe | null {
  const recipe = (count: number): Recipe | null => recipeSchema.safeParse(recipeOf(count)).data ?? null;
  const pins = (count: number): number => {
    const own = recipe(count);
    return (own && pinsOf(own)?.length) ?? 0;
  };
  let high = 1;
  while (pins(high) < size) {
    if (high > 1e5) return null;
    high *= 2;
  }
  let low = high / 2;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (pins(middle) < size) low = middle;
    else high = middle;
  }
  return recipe(high);
}

function pinsOf(recipe: Recipe): readonly Point[] | null {
  const drafted = draft(recipe);
  return drafted.ok ? drafted.value.pins : null;
}

/** Milliseconds of the fastest of several rounds: other work on the machine can only make a round slower. */
function fastest(work: () => unknown): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times);
}
