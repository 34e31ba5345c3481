import { z } from 'zod';
import { count, tint } from './figures.ts';

/** The two long edges of a strip. */

export const stripFootside = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('plain') }),
  z.strictObject({
    kind: z.literal('passives'),
    share: z
      .number()
      .min(0.2)
      .max(1)
      .describe(
        'How far the footside pins stand outside the ground for the passive pair, as a share of a column.',
      ),
  }),
]);

const perRepeat = count(1, 100)
  .exactOptional()
  .describe('How many of them there are in a repeat; one where absent.');
const curved = {
  pins: count(3, 500).describe('Pins of each, with those at both ends, where it meets the next.'),
  depthShare: z
    .number()
    .min(0.05)
    .max(0.5)
    .exactOptional()
    .describe(
      'How far each stands out, as a share of its length from end to end; at half of it, it is half round.',
    ),
  perRepeat,
  stitch: z.enum(['cloth', 'half', 'whole']).describe('How each is worked.'),
  tint: tint.exactOptional().describe('Its colour; the usual one of its stitch where absent.'),
};

export const stripHeadside = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('straight') }),
  z.strictObject({ kind: z.literal('footside') }).describe('A second footside: the strip is an insertion.'),
  z.strictObject({
    kind: z.literal('points'),
    depth: count(1, 200)
      .exactOptional()
      .describe('Height of a point, in columns; as much as fits where absent.'),
    perRepeat,
  }),
  z
    .strictObject({ kind: z.literal('fans'), ...curved })
    .describe(
      'Fans between points of the ground; where no share is given, each is round the pin in its corner.',
    ),
  z
    .strictObject({ kind: z.literal('scallops'), ...curved })
    .describe(
      'Shallow arcs with the ground filled out beneath; a fifth as deep as long where no share is given.',
    ),
]);

export type StripHeadside = z.output<typeof stripHeadside>;
