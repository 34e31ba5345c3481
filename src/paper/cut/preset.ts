import { z } from 'zod';
import { cutLayers } from './drawing.ts';

const length = z.number().min(0.1).max(10_000);
const colour = z.string().regex(/^#[0-9a-f]{6}$/i, 'a colour such as #ff0000');
const text = z.string().trim().min(1).max(200);
const layer = z.enum(cutLayers);

/**
 * What one shop or one machine wants, kept as a file beside the patterns. Everything but its name may be left out.
 * Numbers for feed and power are the owner's own, found with the machine's manual and the test coupon.
 */
export const cuttingPresetSchema = z.strictObject({
  format: z.literal('pinlight-cutting'),
  version: z.literal(1),
  name: text,
  kerf: z
    .number()
    .min(0)
    .max(2)
    .describe('mm that the beam takes away; 0 where the shop compensates for it.')
    .exactOptional(),
  cardThickness: z.number().min(0.05).max(10).exactOptional(),
  bed: z.strictObject({ width: length, height: length }).exactOptional(),
  spread: z
    .number()
    .min(0.1)
    .max(1000)
    .describe('mm from a hole to the next, so that the heat spreads; the shortest way where absent.')
    .exactOptional(),
  holes: z
    .enum(['circle', 'polyline', 'arcs'])
    .describe('How holes are drawn: circles, closed polylines, or (SVG) paths of two arcs.')
    .exactOptional(),
  svg: z
    .strictObject({
      stroke: z.number().min(0.001).max(1).describe('Line width, mm.').exactOptional(),
      colours: z.partialRecord(layer, colour).exactOptional(),
    })
    .exactOptional(),
  dxf: z
    .strictObject({
      release: z.enum(['R12', 'R2000']).exactOptional(),
      unit: z.enum(['mm', 'in']).exactOptional(),
    })
    .exactOptional(),
  gcode: z
    .strictObject({
      feed: z.number().min(1).max(100_000).describe('mm a minute, along cuts.').exactOptional(),
      power: z.number().min(0).max(100_000).describe('S while cutting.').exactOptional(),
      engraveFeed: z.number().min(1).max(100_000).exactOptional(),
      engravePower: z.number().min(0).max(100_000).exactOptional(),
      mostPower: z.number().min(1).max(100_000).describe('S at full power.').exactOptional(),
      arcs: z.boolean().describe('false: straight lines only.').exactOptional(),
      pierce: z.number().min(0).max(10_000).describe('Milliseconds of standing beam a hole.').exactOptional(),
      dwellUnit: z.enum(['s', 'ms']).describe('In which the firmware reads G4 P.').exactOptional(),
    })
    .exactOptional(),
});

export type CuttingPreset = z.infer<typeof cuttingPresetSchema>;
