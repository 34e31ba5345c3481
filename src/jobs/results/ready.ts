import { z } from 'zod';
import type { Ready } from '../ready/ready.ts';
import { lookResult, toLookResult } from './look.ts';
import { trueResult } from './true.ts';

/** What `pinlight ready --json` prints. */
export const readyResult = z.strictObject({
  files: z.array(z.string()).describe('The files in the folder, in the order in which they are used.'),
  pins: z.int().nonnegative(),
  leftOut: z.int().nonnegative().describe('Marks that are more likely no pins.'),
  true: trueResult.describe('What straightening proposed and did; pins without those left out.'),
  look: lookResult.describe('What looking over the straightened pattern found.'),
});

export type ReadyResult = z.infer<typeof readyResult>;

export const toReadyResult = ({ files, findings, trued, weighed }: Ready): ReadyResult => ({
  files: files.map(({ name }) => name),
  pins: weighed.pattern.pins.length,
  leftOut: weighed.leftOut.length,
  true: trued.result,
  look: toLookResult(trued.pattern, findings),
});
