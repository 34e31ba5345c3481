import { z } from 'zod';
import { count, tint } from './figures.ts';

/** Where an area lies in every repeat, and how it is worked. Places are in columns and rows of the ground. */

const column = count(0, 3_000);
const row = z.int().min(-400).max(400);

const worked = {
  stitch: z.enum(['cloth', 'half', 'whole']),
  tint: tint.exactOptional().describe('Its colour; the usual one of its stitch where absent.'),
  gimp: z.boolean().exactOptional().describe('Whether a gimp runs round it.'),
};

const centred = {
  column: column.describe('Column of its middle, counted from the footside.'),
  row: row.describe(
    'Row of its middle, counted from the top of the repeat; two rows are one footside spacing.',
  ),
};

export const stripArea = z.discriminatedUnion('shape', [
  z.strictObject({
    shape: z.literal('diamond'),
    ...centred,
    size: count(1, 200).describe('Holes of the ground along each side; there is one pin more.'),
    ...worked,
  }),
  z.strictObject({
    shape: z.literal('square'),
    ...centred,
    size: count(1, 200).describe(
      'Holes of the ground along each side; the sides lie along and across the strip.',
    ),
    ...worked,
  }),
  z.strictObject({
    shape: z.literal('chevron'),
    column: column.describe('Column of its tip, counted from the footside.'),
    row: row.describe('Row of its tip, counted from the top of the repeat.'),
    arm: count(2, 200).describe('Holes of the ground along each arm, outside.'),
    size: count(1, 100).describe('How thick it is, in holes of the ground; less than the arm.'),
    points: z.enum(['headside', 'footside', 'up', 'down']).describe('Where its tip points.'),
    ...worked,
  }),
  z.strictObject({
    shape: z.literal('trail'),
    column: column.describe('Column of its edge where it is nearest to the footside.'),
    row: row.describe('Row at which it is nearest to the footside.'),
    size: count(1, 100).describe('How thick it is, in holes of the ground.'),
    perRepeat: count(1, 100)
      .exactOptional()
      .describe('How often it goes to and fro in a repeat; once where absent.'),
    ...worked,
  }),
  z.strictObject({
    shape: z.literal('spider'),
    ...centred,
    size: count(2, 12).describe('How far it reaches, in holes of the ground.'),
  }),
]);

export type StripArea = z.output<typeof stripArea>;
