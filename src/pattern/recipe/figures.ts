import { z } from 'zod';

/** Kinds of figure that recipes are made of. */

/** A length that pins could stand apart, mm. */
export const length = z.number().min(0.1).max(10_000);

/** An angle at the door: degrees. */
export const angle = (least: number, most: number) => z.number().min(least).max(most);

export const count = (least: number, most: number) => z.int().min(least).max(most);

export const place = z.strictObject({
  x: z.number().min(-10_000).max(10_000),
  y: z.number().min(-10_000).max(10_000),
});

/** '#rrggbb' in lower case. */
export const tint = z.string().regex(/^#[0-9a-f]{6}$/);
