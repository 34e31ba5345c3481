import { z } from 'zod';
import type { Finding } from '#craft/look/finding.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { lookResult, toLookResult } from './look.ts';
import { type TrueResult, trueResult } from './true.ts';

/** What `pinlight ready --json` prints. */
export const readyResult = z.strictObject({
  files: z.array(z.string()).describe('The files in the folder, in the order in which they are used.'),
  pins: z.int().nonnegative(),
  leftOut: z.int().nonnegative().describe('Marks that are more likely no pins.'),
  true: trueResult.describe('What straightening proposed and did; pins without those left out.'),
  look: lookResult.describe('What looking over the straightened pattern found.'),
});

export type ReadyResult = z.infer<typeof readyResult>;

interface Made {
  readonly files: readonly { readonly name: string }[];
  readonly findings: readonly Finding[];
  readonly trued: { readonly pattern: Pattern; readonly result: TrueResult };
  readonly weighed: { readonly pattern: Pattern; readonly leftOut: readonly unknown[] };
}

export const toReadyResult = ({ files, findings, trued, weighed }: Made): ReadyResult => ({
  files: files.map(({ name }) => name),
  pins: weighed.pattern.pins.length,
  leftOut: weighed.leftOut.length,
  true: trued.result,
  look: toLookResult(trued.pattern, findings),
});
