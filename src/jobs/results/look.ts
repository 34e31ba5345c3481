import { z } from 'zod';
import type { Finding, Measure } from '#craft/look/finding.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { pinNumber, pointResult, rounded, roundedPoint, unitResult } from './numbers.ts';

const measure = z.strictObject({
  value: z.number(),
  unit: z
    .enum(['mm', 'px', 'pins', 'ratio', 'difference', 'share'])
    .describe('"ratio" is a contrast ratio (WCAG 2), "difference" a colour difference (CIEDE2000).'),
});

/** What `pinlight look --json` prints. */
export const lookResult = z.strictObject({
  unit: unitResult,
  faults: z.int().nonnegative(),
  warnings: z.int().nonnegative(),
  notes: z.int().nonnegative(),
  findings: z.array(
    z.strictObject({
      rule: z.string().describe('The name of the rule, as docs/look.md lists them.'),
      severity: z.enum(['fault', 'warning', 'note']),
      at: pointResult.nullable().describe('Where; null for what concerns the whole pattern.'),
      pins: z.array(pinNumber),
      measured: measure.nullable(),
      allowed: measure.nullable(),
      sentence: z.string(),
    }),
  ),
});

export type LookResult = z.infer<typeof lookResult>;

export function toLookResult(pattern: Pattern, findings: readonly Finding[]): LookResult {
  const count = (severity: Finding['severity']) =>
    findings.filter((finding) => finding.severity === severity).length;
  return {
    unit: pattern.unit,
    faults: count('fault'),
    warnings: count('warning'),
    notes: count('note'),
    findings: findings.map(({ rule, severity, at, pins, measured, allowed, sentence }) => ({
      rule,
      severity,
      at: at && roundedPoint(at),
      pins: [...pins],
      measured: toMeasure(measured),
      allowed: toMeasure(allowed),
      sentence,
    })),
  };
}

const toMeasure = (measure: Measure | undefined) =>
  measure === undefined ? null : { value: rounded(measure.value), unit: measure.unit };
