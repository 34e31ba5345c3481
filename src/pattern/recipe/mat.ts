import { z } from 'zod';
import { angle, count, length, tint } from './figures.ts';
import { stripRecipe } from './strip.ts';

/**
 * A round mat: rounds of ground from the centre outward, bands of cloth between them, and an edge. Each round is a
 * strip bent by the map that keeps angles, so that its cells keep their shape and grow outward.
 */

const { width, length: repeat, ground, areas, headside } = stripRecipe.shape;

const cloth = {
  stitch: z.enum(['cloth', 'half', 'whole']).default('cloth'),
  tint: tint.exactOptional().describe('Its colour; the usual one of its stitch where absent.'),
};

const matGround = {
  width: width.describe('Width of the ground at its narrowest, in columns from one edge to the other.'),
  length: repeat
    .default(1)
    .describe('Length of a repeat, in spacings of the inner edge; whole repeats go round.'),
  ground,
  areas,
};

const matRound = z.strictObject({
  ...matGround,
  band: z
    .strictObject({
      width: count(1, 40).describe('Width of the band, in columns of the ground inside it.'),
      doubled: z
        .boolean()
        .default(false)
        .describe(
          'Whether its outer edge has twice the pins of its inner edge, so that the ground is fine again.',
        ),
      ...cloth,
    })
    .describe('The band of cloth that goes round it.'),
});

const matCentre = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('open') }).describe('An opening, sewn round a cloth.'),
  z
    .strictObject({ kind: z.literal('pin') })
    .describe('One pin, to which the pairs run as to that of a spider.'),
  z
    .strictObject({
      kind: z.literal('ring'),
      pins: count(3, 360).describe('How many pins stand in the small ring; a part of the sectors.'),
      radius: length.describe('Radius of the small ring, mm.'),
      ...cloth,
    })
    .describe('A small round of cloth, to whose pins the pairs run.'),
]);

export const matRecipe = z.strictObject({
  kind: z.literal('mat'),
  sectors: count(6, 720).describe('How many pins stand in the innermost ring of the ground.'),
  spacing: length.describe('Straight distance between neighbouring pins of the innermost ring, mm.'),
  angle: angle(30, 75).default(45).describe('Angle of the ground to the rings, degrees.'),
  centre: matCentre.default({ kind: 'open' }),
  rounds: z
    .array(matRound)
    .max(20)
    .default([])
    .describe('Rounds of ground with a band, from the centre outward.'),
  outer: z
    .strictObject({
      ...matGround,
      headside,
      picots: z.boolean().default(false).describe('Whether every pin of the edge is a picot.'),
    })
    .describe('The outermost round of ground, and the edge.'),
});

export type MatRecipe = z.output<typeof matRecipe>;
