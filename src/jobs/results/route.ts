import { z } from 'zod';
import type { Pattern } from '#pattern/pattern.ts';
import type { HandRoute, MachineRoute } from '../route.ts';
import { pinNumber, pointResult, rounded, roundedPoint, unitResult } from './numbers.ts';

const count = z.int().nonnegative();

const handResult = z.strictObject({
  by: z.literal('hand'),
  unit: unitResult,
  holes: count,
  settings: count.describe('How often the ruler is laid anew.'),
  waxings: count,
  minutes: count.describe('Roughly, without a rest.'),
  passes: z
    .array(
      z.strictObject({
        kind: z.enum(['outside-edge', 'curve', 'motif', 'filling', 'ground']),
        setting: z.int().positive().nullable().describe('The number of the ruler setting, from 1.'),
        ruler: z
          .strictObject({ from: pointResult, to: pointResult })
          .nullable()
          .describe('The ruler lies through both points; null where the eye leads.'),
        order: z.array(pinNumber),
      }),
    )
    .describe('In their order; every pin comes in exactly one of them.'),
});

const machineResult = z.strictObject({
  by: z.literal('machine'),
  unit: unitResult,
  holes: count,
  closed: z.literal(true),
  length: z.number().describe('The whole way, with the way back from the last hole to the first.'),
  nearest: z.number().describe('The shortest step from one hole to the next.'),
  spread: z
    .strictObject({ distance: z.number(), tooNear: count.describe('How many steps are shorter than that.') })
    .nullable()
    .describe('What --spread asked for and what came of it; null for the shortest way.'),
  order: z.array(pinNumber),
});

/** What `pinlight route --json` prints. */
export const routeResult = z.discriminatedUnion('by', [handResult, machineResult]);

export type RouteResult = z.infer<typeof routeResult>;

export function toRouteResult({ unit }: Pattern, route: HandRoute | MachineRoute): RouteResult {
  if (route.by === 'machine') {
    const { order, length, nearest, spread, tooNear } = route;
    return {
      by: 'machine',
      unit,
      holes: order.length,
      closed: true,
      length: rounded(length),
      nearest: rounded(nearest),
      spread: spread === null ? null : { distance: rounded(spread), tooNear },
      order: [...order],
    };
  }
  let setting = 0;
  const passes = route.order.passes.map(({ kind, ruler, order }) => ({
    kind,
    setting: ruler === null ? null : ++setting,
    ruler: ruler && { from: roundedPoint(ruler.from), to: roundedPoint(ruler.to) },
    order: [...order],
  }));
  return { by: 'hand', unit, ...route.effort, passes };
}
