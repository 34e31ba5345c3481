import { z } from 'zod';
import { count } from './figures.ts';
import { stripRecipe } from './strip.ts';
import { stripArea } from './strip-area.ts';
import { stripHeadside } from './strip-edge.ts';

/**
 * An edging round a handkerchief or a cloth: four strips and four corners, the footside inside and sewn to the cloth,
 * the headside outside. Each side is a strip of plain ground; what of it a corner would cut becomes ground again.
 */
const { spacing, angle, length, width } = stripRecipe.shape;
const [straight, , points, fans, scallops] = stripHeadside.options;
const [diamond, square, chevron, , spider] = stripArea.options;

const middle = count(2, 3_000).describe('Column of its middle, on the line from corner to corner.');

export const frameRecipe = z.strictObject({
  kind: z.literal('frame'),
  part: z
    .enum(['corner', 'frame'])
    .describe('One corner with its repeats on either side, or the whole frame.'),
  across: count(1, 10_000).describe('Repeats along the sides that go across.'),
  down: count(1, 10_000).describe('Repeats along the sides that go down.'),
  spacing,
  angle,
  length,
  width,
  headside: z
    .discriminatedUnion('kind', [straight, points, fans, scallops])
    .exactOptional()
    .describe('Straight where absent.'),
  areas: z
    .array(z.discriminatedUnion('shape', [diamond, square, chevron, spider]))
    .max(100)
    .exactOptional()
    .describe('What is worked in another stitch in every repeat.'),
  corner: z
    .discriminatedUnion('shape', [
      diamond.omit({ column: true, row: true }).extend({ column: middle }),
      spider.omit({ column: true, row: true }).extend({ column: middle }),
    ])
    .exactOptional()
    .describe('What stands in the corner, if anything.'),
  tolerance: z
    .number()
    .min(0)
    .max(0.5)
    .default(0.25)
    .describe(
      'How much longer or shorter steps between pins may be in the corner, as a share of the others.',
    ),
});

export type FrameRecipe = z.output<typeof frameRecipe>;
