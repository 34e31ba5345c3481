import { z } from 'zod';
import { coordinate, count, length, place, tint } from './figures.ts';

const course = z
  .union([
    z.strictObject({
      through: z
        .array(place)
        .min(1)
        .max(5_000)
        .describe('Points that the middle line goes through, in order.'),
    }),
    z.strictObject({
      from: place,
      curves: z
        .array(z.strictObject({ first: place, second: place, to: place }))
        .min(1)
        .max(5_000)
        .describe('Cubic Bézier curves end to end: the two points that shape each, and where it ends.'),
    }),
  ])
  .describe('The middle line of the tape.');

const end = z.enum(['square', 'pointed']);

/** One tape: a band of cloth with pins along both edges. Left and right are those of someone who walks along it. */
const tape = z.strictObject({
  course,
  closed: z.boolean().default(false).describe('Whether the tape ends where it begins.'),
  width: length.describe('From the pins of one edge to those of the other, mm.'),
  spacing: length.describe('Wanted distance between neighbouring pins of an edge, mm.'),
  groups: count(1, 10_000)
    .default(1)
    .describe(
      'Into how many equal parts the spaces along an edge fall, so that equal parts of a course get equal pins.',
    ),
  start: end.default('square'),
  finish: end.default('square'),
  stitch: z.enum(['cloth', 'half', 'whole']).default('cloth'),
  tint: tint.exactOptional(),
  workers: z.boolean().default(true).describe('Whether the lines of the workers are drawn.'),
  footside: z.enum(['left', 'right']).exactOptional().describe('The edge that is sewn to cloth.'),
});

const plait = z.strictObject({
  through: z
    .array(place)
    .min(2)
    .max(1_000)
    .describe(
      'From the pin nearest to the first place, by the places between, to the pin nearest to the last.',
    ),
  picots: count(0, 1_000).default(0).describe('Picots, at even distances and on alternate sides.'),
  loop: length.default(1.2).describe("How far a picot's pin stands from the plait, mm."),
});

const leaf = z.strictObject({
  from: place.describe('It begins at the pin nearest to this place.'),
  to: place.describe('It ends at the pin nearest to this place.'),
  width: length.describe('At its widest, mm.'),
});

const again = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('step'),
      step: z.strictObject({ x: coordinate, y: coordinate }),
      count: count(2, 1_000),
    }),
    z.strictObject({ kind: z.literal('turn'), centre: place, count: count(2, 360) }),
  ])
  .describe(
    'Everything is drawn once and comes again: moved by a step, or turned round a centre. Tapes go on from one time to the next.',
  );

/** Tapes along drawn curves, with plaits, picots and leaves between them. Later tapes are sewn to earlier ones. */
export const tapeRecipe = z.strictObject({
  kind: z.literal('tape'),
  tapes: z.array(tape).min(1).max(200),
  joins: z
    .array(place)
    .max(2_000)
    .default([])
    .describe('Pins of their own, at which plaits and leaves meet.'),
  plaits: z.array(plait).max(2_000).default([]),
  leaves: z.array(leaf).max(2_000).default([]),
  again: again.exactOptional(),
});

export type TapeRecipe = z.output<typeof tapeRecipe>;
export type TapeCourse = z.output<typeof course>;
export type Tape = z.output<typeof tape>;
export type Plait = z.output<typeof plait>;
export type Leaf = z.output<typeof leaf>;
export type Again = z.output<typeof again>;
