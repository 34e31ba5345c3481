import { z } from 'zod';
import { faultsOf } from '#jobs/light/faults.ts';
import { revisionOfPins } from '#jobs/revision.ts';
import { BENCH } from '#jobs/words/door.ts';
import { faultsInWords, leanInWords, summaryInWords } from '#jobs/words/light.ts';
import type { Fault } from '#paper/sheet/light/fault-signs.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { CardChecked } from '../../worker/light-jobs.ts';

const point = z.strictObject({ x: z.number(), y: z.number() });

export const keptCheckSchema = z.strictObject({
  /** By which pins the card was checked; others may have come since. */
  pins: z.string(),
  summary: z.string(),
  notes: z.array(z.string()),
  faults: z.array(
    z.strictObject({
      kind: z.enum(['missing', 'off-centre', 'oval', 'large', 'extra', 'unseen']),
      at: point,
      hole: point.nullable(),
      /** Radians. */
      angle: z.number().nullable(),
      /** Null where a pin was not seen. */
      words: z.string().nullable(),
      mended: z.boolean(),
    }),
  ),
});

/** What the last photo told of the card, and what is mended since. The photo itself is not kept. */
export type KeptCheck = z.infer<typeof keptCheckSchema>;
export type KeptFault = KeptCheck['faults'][number];

/** What is kept of a photo that was just checked. */
export function keptFrom(pattern: Pattern, { judgement, notes }: CardChecked): KeptCheck {
  const words = faultsInWords(judgement);
  return {
    pins: revisionOfPins(pattern),
    summary: summaryInWords(judgement),
    notes: [...notes, ...judgement.zones.map((zone) => leanInWords(zone, BENCH))],
    faults: faultsOf(pattern.pins, judgement).map(({ kind, at, hole, angle }, index) => ({
      kind,
      at: { x: at.x, y: at.y },
      hole: hole ? { x: hole.x, y: hole.y } : null,
      angle: angle ?? null,
      words: words[index] ?? null,
      mended: false,
    })),
  };
}

export const signOf = ({ kind, at, hole, angle }: KeptFault): Fault => ({
  kind,
  at,
  ...(hole && { hole }),
  ...(angle !== null && { angle }),
});

export const withMended = (check: KeptCheck, which: number, mended: boolean): KeptCheck => ({
  ...check,
  faults: check.faults.map((fault, index) => (index === which ? { ...fault, mended } : fault)),
});
