import { z } from 'zod';
import type { Arranged } from '../arrange/arrange.ts';
import { rounded, unitResult } from './numbers.ts';

/** What `pinlight arrange --json` prints. */
export const arrangeResult = z.strictObject({
  unit: unitResult,
  pins: z.int().nonnegative(),
  width: z.number().describe('From the outermost pin to the outermost pin.'),
  height: z.number(),
  recipe: z.boolean().describe('Whether it can still be drafted anew from its recipe.'),
});

export type ArrangeResult = z.infer<typeof arrangeResult>;

export const toArrangeResult = ({ pattern, width, height }: Arranged): ArrangeResult => ({
  unit: pattern.unit,
  pins: pattern.pins.length,
  width: rounded(width),
  height: rounded(height),
  recipe: pattern.recipe !== undefined,
});
