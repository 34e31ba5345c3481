import { z } from 'zod';
import type { MissingPin, Structure } from '#pattern/structure.ts';
import { pinNumber, pointResult, rounded, roundedPoint, share, unitResult } from './numbers.ts';

const base = {
  id: z.string().describe('For --leave and --take.'),
  rms: z.number().describe('Root mean square distance of its pins from where it puts them, before.'),
};

const structure = z.discriminatedUnion('kind', [
  z.strictObject({
    ...base,
    kind: z.literal('lattice'),
    origin: pointResult,
    a: pointResult,
    b: pointResult,
    pins: z.array(pinNumber),
    nodes: z.array(z.tuple([z.int(), z.int()])).describe('For each pin, its whole steps along a and b.'),
  }),
  z.strictObject({
    ...base,
    kind: z.literal('polar'),
    centre: pointResult,
    sectors: z.int(),
    radii: z.array(z.number()),
    phases: z.array(z.number()).describe('Radians, clockwise from the x axis.'),
    pins: z.array(pinNumber),
    nodes: z.array(z.tuple([z.int(), z.int()])).describe('For each pin, its ring and sector.'),
  }),
  z.strictObject({
    ...base,
    kind: z.literal('run'),
    shape: z.enum(['line', 'arc', 'curve']),
    closed: z.boolean(),
    even: z.boolean(),
    spacing: z.number(),
    pins: z.array(pinNumber),
  }),
  z.strictObject({
    ...base,
    kind: z.literal('repeat'),
    step: pointResult,
    copies: z.int(),
    tracks: z.array(z.array(pinNumber.nullable())),
  }),
  z.strictObject({
    ...base,
    kind: z.literal('mirror'),
    through: pointResult,
    direction: pointResult,
    pairs: z.array(z.tuple([pinNumber, pinNumber.nullable()])),
  }),
  z.strictObject({
    ...base,
    kind: z.literal('turn'),
    centre: pointResult,
    order: z.int(),
    orbits: z.array(z.array(pinNumber.nullable())),
  }),
]);

/** What `pinlight true --json` prints. */
export const trueResult = z.strictObject({
  unit: unitResult,
  pins: z
    .array(z.strictObject({ x: z.number(), y: z.number(), structure: z.string().nullable() }))
    .describe('In the order of the input: where each pin stands now, and the structure that says so.'),
  missing: z
    .array(
      z.strictObject({
        id: z.string().describe('For --take.'),
        x: z.number(),
        y: z.number(),
        confidence: share,
        structure: z.string(),
        why: z.string(),
      }),
    )
    .describe('Pins that their neighbours call for; only --add-missing or --take puts them in.'),
  stray: z
    .array(pinNumber)
    .describe('Pins that seem to belong to nothing; only --drop-stray or --take takes them out.'),
  structures: z.array(structure),
  moved: z.strictObject({
    pins: z.int().nonnegative().describe('How many pins stand elsewhere now.'),
    farthest: z.number().describe('The longest of their ways.'),
  }),
});

export type TrueResult = z.infer<typeof trueResult>;

/** A structure with every number rounded. */
export const toStructureResult = (found: Structure): TrueResult['structures'][number] =>
  roundedDeep(found) as TrueResult['structures'][number];

export const toMissingResult = (
  missing: MissingPin,
  index: number,
  place: { readonly x: number; readonly y: number },
  why: string,
): TrueResult['missing'][number] => ({
  id: `missing-${index + 1}`,
  ...roundedPoint(place),
  confidence: rounded(missing.confidence),
  structure: missing.structure,
  why,
});

function roundedDeep(value: unknown): unknown {
  if (typeof value === 'number') return rounded(value);
  if (Array.isArray(value)) return value.map(roundedDeep);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, roundedDeep(item)]));
}
