import { z } from 'zod';
import { PointIndex } from '#base/geometry/point-index.ts';
import { OFF_CENTRE } from '#craft/light/judge.ts';
import { revisionOfPins } from '#jobs/revision.ts';
import type { Pattern } from '#pattern/pattern.ts';

const length = z.number();

export const placeSchema = z.strictObject({
  /** Of which pins; others may have come since. */
  pins: z.string(),
  step: z.int().nonnegative(),
  /** The holes that are made: the pin by its index, and where it stood. */
  done: z.array(z.strictObject({ pin: z.int().nonnegative(), x: length, y: length })),
  side: z.enum(['front', 'back']),
  large: z.boolean(),
  follows: z.boolean(),
});

/** How far the pricking is, and how it is looked at. */
export type Place = z.infer<typeof placeSchema>;

/** At the first hole, looked at as before. */
export const firstPlace = (pattern: Pattern, before: Place | null): Place => ({
  ...(before ?? { side: 'front', large: false, follows: true }),
  pins: revisionOfPins(pattern),
  step: 0,
  done: [],
});

export const doneIn = ({ done }: Place): ReadonlySet<number> => new Set(done.map(({ pin }) => pin));

export const withDone = (place: Place, { pins }: Pattern, done: ReadonlySet<number>): Place => ({
  ...place,
  done: [...done].map((pin) => ({ pin, x: pins[pin]!.x, y: pins[pin]!.y })),
});

/**
 * The place among pins that have changed: a hole counts as made where one was made no farther off than a hole may be
 * from its pin.
 */
export function carriedOver(place: Place, pattern: Pattern): Place {
  const made = new PointIndex(place.done);
  const done = pattern.pins.flatMap((pin, index) => (made.nearest(pin, OFF_CENTRE) === null ? [] : [index]));
  return withDone({ ...place, pins: revisionOfPins(pattern) }, pattern, new Set(done));
}

/** The first step in which a hole is still to be made, or the one after the last. */
export function firstOpen(
  passes: readonly { readonly order: readonly number[] }[],
  done: ReadonlySet<number>,
): number {
  const open = passes.findIndex(({ order }) => order.some((pin) => !done.has(pin)));
  return open < 0 ? passes.length : open;
}
