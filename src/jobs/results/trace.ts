import { z } from 'zod';
import { mmPerPixel } from '#base/units/length.ts';
import type { TracedHoles } from '#craft/trace/holes.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { rounded, roundedPoint, share, unitResult } from './numbers.ts';

/** What `pinlight trace --json` prints. */
export const traceResult = z.strictObject({
  unit: unitResult,
  dpi: z.number().positive().nullable().describe('Dots an inch; null where nobody knows the scale.'),
  scaleFrom: z
    .enum(['file', 'given', 'span', 'none'])
    .describe('The file states it, --dpi gave it, --span measured it, or nobody knows it.'),
  width: z.int().positive().describe('Of the picture as a person sees it upright, pixels.'),
  height: z.int().positive(),
  kind: z.enum(['printed', 'pricked']).describe('Printed dots, or holes of an old card.'),
  holes: z
    .array(
      z.strictObject({
        x: z.number().describe('Pixels to the right; the centre of the top left pixel is (0, 0).'),
        y: z.number().describe('Pixels down.'),
        diameter: z.number().nullable().describe('Millimetres; null where nobody knows the scale.'),
        diameterPx: z.number().describe('Pixels.'),
        confidence: share,
        doubt: z.array(z.string()).describe('Why it is doubtful, in short words; empty where it is not.'),
      }),
    )
    .describe('Every mark that may be a pin, from the top down; those under 0.5 are more likely none.'),
  pins: z
    .array(z.strictObject({ x: z.number(), y: z.number() }))
    .describe('The same marks, in the same order, in the unit above.'),
  lines: z
    .array(z.tuple([z.int().nonnegative(), z.int().nonnegative()]))
    .describe('Pairs of pins, by their place from 0, that a working line joins.'),
  notes: z.array(z.string()).describe('What a person should know, in words.'),
});

export type TraceResult = z.infer<typeof traceResult>;

export function toTraceResult(
  picture: { readonly width: number; readonly height: number },
  { holes, kind }: TracedHoles,
  lines: readonly { readonly from: number; readonly to: number }[],
  pattern: Pattern,
  notes: readonly string[],
): TraceResult {
  const { scale } = pattern;
  const dpi = 'dpi' in scale ? scale.dpi : null;
  const perPixel = dpi === null ? null : mmPerPixel(dpi);
  return {
    unit: pattern.unit,
    dpi: dpi === null ? null : rounded(dpi),
    scaleFrom: scale.from as TraceResult['scaleFrom'],
    width: picture.width,
    height: picture.height,
    kind,
    holes: holes.map(({ column, row, diameter, confidence, doubt }) => ({
      ...roundedPoint({ x: column, y: row }),
      diameter: perPixel === null ? null : rounded(diameter * perPixel),
      diameterPx: rounded(diameter),
      confidence: rounded(confidence),
      doubt: [...doubt],
    })),
    pins: pattern.pins.map(roundedPoint),
    lines: lines.map(({ from, to }) => [from, to]),
    notes: [...notes],
  };
}
