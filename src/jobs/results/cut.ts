import { z } from 'zod';
import { travelOf } from '#paper/cut/travel.ts';
import type { CutPattern } from '../cut/cut.ts';
import { pinNumber, pointResult, rounded, roundedPoint } from './numbers.ts';

const file = z.strictObject({
  file: z.string(),
  kind: z.enum(['card', 'part', 'film', 'coupon']),
  width: z.number().describe('The file should measure this across, mm, whatever its own unit.'),
  height: z.number(),
  holes: z.int().nonnegative(),
  first: pointResult
    .nullable()
    .describe('Centre of the first hole as the file has it, mm: y runs up in DXF and G-code, down in SVG.'),
  travel: z.number().describe('From hole to hole, first to last, mm.'),
});

/** What `pinlight cut --json` prints. */
export const cutResult = z.strictObject({
  holes: z.int().nonnegative().describe('How many holes are made; those that coincide count once.'),
  merged: z.int().nonnegative().describe('How many pins coincide with another and got no hole of their own.'),
  hole: z.number().describe('Diameter of the finished hole, mm.'),
  kerf: z.number().describe('mm taken into account; 0 where the shop compensates.'),
  drawn: z.number().describe('Diameter of the circles in the file, mm; 0 where they are mere points.'),
  width: z.number().describe('Of the whole job, mm.'),
  height: z.number(),
  first: pointResult.nullable().describe('Of the first file.'),
  travel: z.number().describe('Of the whole job, mm.'),
  order: z.array(pinNumber).describe('Pins in the order of their holes.'),
  targets: z.array(pointResult).describe('Middles of the targets, from the top left, mm.'),
  files: z.array(file),
  printed: z.string().nullable().describe('The sheet that is printed before it is cut.'),
  overlapping: z
    .array(z.tuple([z.string(), z.string()]))
    .describe('Pairs of pins, by id, whose holes run into each other.'),
  warnings: z.array(z.string()).describe('What a person should know, in words.'),
});

export type CutResult = z.infer<typeof cutResult>;

/** `names` are the files' own, in their order. */
export function toCutResult(
  { job, files, kerf }: CutPattern,
  names: readonly string[],
  printed: string | null,
  warnings: readonly string[],
): CutResult {
  const merged = job.notes.find((note) => note.kind === 'holes-merged');
  const overlapping = job.notes.find((note) => note.kind === 'holes-overlap');
  return {
    holes: job.holes.length,
    merged: merged?.count ?? 0,
    hole: rounded(job.hole),
    kerf: rounded(kerf),
    drawn: rounded(job.drawn),
    width: rounded(job.card.width),
    height: rounded(job.card.height),
    first: files[0]?.first ? roundedPoint(files[0].first) : null,
    travel: rounded(travelOf(job.holes)),
    order: [...job.pins],
    targets: job.targets.map(roundedPoint),
    files: files.map(({ kind, width, height, holes, first, travel: way }, k) => ({
      file: names[k]!,
      kind,
      width: rounded(width),
      height: rounded(height),
      holes,
      first: first && roundedPoint(first),
      travel: rounded(way),
    })),
    printed,
    overlapping: overlapping?.pairs.map(([one, other]): [string, string] => [one, other]) ?? [],
    warnings: [...warnings],
  };
}
