import { between } from '#base/geometry/point.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { type CheckedRun, pinsLacking, stepsAlong } from '../runs.ts';
import { capital, count, sayLength, sayPins } from '../say.ts';
import type { Survey } from '../survey.ts';

/** One finding a run, at its worst step. A step of several whole spacings is a gap, which is another rule's business. */
export const unevenSpacing: Rule = {
  id: 'uneven-spacing',
  title: 'Pins unevenly spaced along a line or curve',
  look: (survey) => survey.runs.filter((run) => run.even).flatMap((run) => worstStep(run, survey)),
};

function worstStep(run: CheckedRun, { pattern, options }: Survey): Finding[] {
  const allowed = options.unevenStep * run.spacing;
  const offBy = (length: number) => Math.abs(length - run.spacing);
  const uneven = stepsAlong(run.pins, run.closed, pattern.pins).filter(
    ({ length }) =>
      offBy(length) > allowed + ROUNDING && pinsLacking(length, run.spacing, options.unevenStep) === 0,
  );
  if (uneven.length === 0) return [];
  const worst = uneven.reduce((one, other) => (offBy(other.length) > offBy(one.length) ? other : one));
  const { unit, pins } = pattern;
  const others = uneven.length - 1;
  return [
    {
      rule: 'uneven-spacing',
      severity: 'warning',
      at: between(pins[worst.from]!, pins[worst.to]!, 0.5),
      pins: [worst.from, worst.to],
      measured: { value: offBy(worst.length), unit },
      allowed: { value: allowed, unit },
      sentence: `${capital(sayPins([worst.from, worst.to]))} stand ${sayLength(worst.length, unit)} apart where the others along their line or curve keep ${sayLength(run.spacing, unit)}${others > 0 ? `, and ${count(others, 'more step')} of it ${others === 1 ? 'is' : 'are'} uneven too` : ''}. Space them evenly, or straighten the pattern.`,
    },
  ];
}

/** Files carry 0.001 mm. */
const ROUNDING = 0.002;
