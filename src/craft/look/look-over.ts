import type { Finding, Severity } from './finding.ts';
import { rules } from './rules/index.ts';
import { type Inspection, survey } from './survey.ts';

/**
 * Looks a pattern over with every rule. Faults come first, then warnings, then notes; within each, in the order of the
 * rules. Same inspection, same findings.
 */
export function lookOver(inspection: Inspection): Finding[] {
  const seen = survey(inspection);
  const findings = rules.flatMap((rule) => rule.look(seen));
  return findings.sort((one, other) => RANK[one.severity] - RANK[other.severity]);
}

const RANK: Readonly<Record<Severity, number>> = { fault: 0, warning: 1, note: 2 };
