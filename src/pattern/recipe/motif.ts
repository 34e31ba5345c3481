import { z } from 'zod';
import { angle, count, length, place, tint } from './figures.ts';
import { groundName } from './ground.ts';

const knot = z.strictObject({
  ...place.shape,
  sharp: z.boolean().optional().describe('Whether the outline may turn a corner here.'),
});

const filling = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('ground'),
    ground: groundName.describe('The filling: its pins stand on the lattice of the ground outside.'),
  }),
  z.strictObject({
    kind: z.literal('stitch'),
    stitch: z.enum(['cloth', 'half', 'whole']),
    tint: tint.optional().describe('Tint of the area; left out for that of the stitch.'),
  }),
]);

const motif = z.strictObject({
  at: place
    .default({ x: 0, y: 0 })
    .describe(
      'Where the motif lies: the outline is measured from here, from the top left corner of the lace, mm.',
    ),
  turn: angle(-360, 360)
    .default(0)
    .describe('How far the outline is turned round that place, clockwise, degrees.'),
  mirrored: z.boolean().default(false).describe('Whether left and right change places before it is turned.'),
  outline: z
    .array(knot)
    .min(3)
    .max(200)
    .describe('Points that the outline passes through, in order, closed from the last to the first, mm.'),
  pins: count(3, 5_000)
    .optional()
    .describe(
      'Pins along the outline; left out for about as many as the ground has along such a length, or as fit.',
    ),
  filling: filling.optional().describe('What the motif is filled with; left out for nothing.'),
  gimp: z.boolean().default(true).describe('Whether a gimp runs along the outline.'),
});

/**
 * Motifs in a ground. The ground fills a strip that runs down the sheet (+y) from the top left corner of the lace, and
 * leaves room for the motifs, which keep their shape and size whatever the ground's angle and spacing.
 */
export const motifRecipe = z.strictObject({
  kind: z.literal('motif'),
  spacing: length.describe('Distance between neighbouring footside pins, mm.'),
  angle: angle(30, 75).describe('Angle of the ground to the footside, degrees.'),
  ground: groundName.default('plain'),
  width: length.describe(
    'Width of the lace, mm; the ground takes the whole number of columns that is nearest.',
  ),
  length: count(1, 2_000).describe('Length of a repeat, in footside spacings.'),
  repeats: count(1, 10_000).default(1).describe('How many repeats there are; each has all motifs.'),
  footside: z
    .enum(['none', 'left', 'both'])
    .default('left')
    .describe('Which edges are straight and sewn to cloth.'),
  clearance: length
    .max(1_000)
    .optional()
    .describe(
      'How near ground pins may come to an outline, mm; left out for half of the distance between them.',
    ),
  motifs: z.array(motif).max(500).describe('The motifs; with none it is a panel of ground.'),
});

export type MotifRecipe = z.output<typeof motifRecipe>;
export type MotifShape = MotifRecipe['motifs'][number];
