import { z } from 'zod';

/** Numbers in results are rounded once, here, to a thousandth: of a millimetre, a pixel or a whole. */
export const rounded = (value: number): number => Math.round(value * 1000) / 1000 + 0;

export const roundedPoint = ({ x, y }: { readonly x: number; readonly y: number }) => ({
  x: rounded(x),
  y: rounded(y),
});

export const pointResult = z.strictObject({ x: z.number(), y: z.number() });

export const unitResult = z
  .enum(['mm', 'px'])
  .describe('The unit of all lengths and places: "px" where nobody knows the scale of the picture.');

export const pinNumber = z.int().nonnegative().describe('A pin by its place in the pattern, counted from 0.');

export const share = z.number().min(0).max(1);
