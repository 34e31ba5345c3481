import type { Finding } from '#craft/look/finding.ts';
import { countInWords, listInWords } from './number.ts';

/** The findings as a page to read: what stops the pricking first. */
export function findingsInWords(findings: readonly Finding[]): string {
  if (findings.length === 0) return 'Looked over: nothing was found that needs a second look.\n';
  const groups = (['fault', 'warning', 'note'] as const).flatMap((severity) => {
    const own = findings.filter((finding) => finding.severity === severity);
    return own.length === 0 ? [] : [`${HEADINGS[severity]}\n${own.map(lineOf).join('')}`];
  });
  return `${findingsCountInWords(findings)}\n\n${groups.join('\n')}`;
}

/** 'Looked over: 1 fault, 3 warnings and 2 notes.' */
export function findingsCountInWords(findings: readonly Finding[]): string {
  const many = (severity: Finding['severity']) => findings.filter((one) => one.severity === severity).length;
  const counts = [
    [many('fault'), 'fault'],
    [many('warning'), 'warning'],
    [many('note'), 'note'],
  ] as const;
  const said = counts.flatMap(([count, word]) => (count === 0 ? [] : [countInWords(count, word)]));
  return said.length === 0 ? 'Looked over: nothing was found.' : `Looked over: ${listInWords(said)}.`;
}

const HEADINGS = {
  fault: 'Faults: pricked as it is, the card or the lace is spoilt',
  warning: 'Warnings: most likely a mistake',
  note: 'Notes: worth knowing before the first hole',
} as const;

const lineOf = (finding: Finding): string => `  - ${finding.sentence} (${finding.rule})\n`;
