import { z } from 'zod';
import { angle } from './figures.ts';
import { stripRecipe } from './strip.ts';

/**
 * A strip bent round a centre: a whole ring, or a part of one (a collar, a fan). The bending keeps every angle, so
 * the ground stays at its angle and only its size grows outward. The strip's figures hold at its footside.
 */
export const ringRecipe = z.strictObject({
  ...stripRecipe.shape,
  kind: z.literal('ring'),
  spacing: stripRecipe.shape.spacing.describe(
    'Distance between neighbouring footside pins, mm, measured straight from pin to pin and not along the ring.',
  ),
  repeats: stripRecipe.shape.repeats.describe('How many repeats go round.'),
  foot: z
    .enum(['inside', 'outside'])
    .default('inside')
    .describe('Where the footside lies: inside, sewn round a cloth, or outside, sewn into an opening.'),
  arc: angle(10, 360)
    .default(360)
    .describe(
      'How far the strip goes round, degrees: 360 for a whole ring, less for a collar or a fan. Taken to the nearest with which whole spacings would fill the circle.',
    ),
});

export type RingRecipe = z.output<typeof ringRecipe>;
