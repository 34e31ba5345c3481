import { z } from 'zod';
import { angle, count, length } from './figures.ts';
import { groundName } from './ground.ts';
import { stripArea } from './strip-area.ts';
import { stripFootside, stripHeadside } from './strip-edge.ts';

/**
 * A strip of lace on a lattice: an edging or an insertion. It runs down the sheet (+y) with its footside on the left
 * (x = 0); columns are counted from the footside, rows from the top. Two rows are one footside spacing.
 */
export const stripRecipe = z.strictObject({
  kind: z.literal('strip'),
  spacing: length.describe('Distance between neighbouring footside pins, mm.'),
  angle: angle(30, 75).describe('Angle of the ground to the footside, degrees.'),
  repeats: count(1, 10_000).describe('How many repeats there are.'),
  length: count(1, 200).describe('Length of a repeat, in footside spacings.'),
  width: count(1, 2_000).describe('Width of the ground at its narrowest, in columns.'),
  ground: groundName.default('plain'),
  footside: stripFootside.exactOptional().describe('Plain where absent.'),
  headside: stripHeadside.exactOptional().describe('Straight where absent.'),
  areas: z
    .array(stripArea)
    .max(100)
    .exactOptional()
    .describe('What is worked in another stitch in every repeat.'),
});

export type StripRecipe = z.output<typeof stripRecipe>;
