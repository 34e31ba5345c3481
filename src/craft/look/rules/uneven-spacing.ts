import { between } from '#base/geometry/point.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { type CheckedRun, pinsLacking, stepsAlong } from '../runs.ts';
import { capital, count, sayLength, sayPins } from '../say.ts';
import { median } from '../spacing.ts';
import type { Survey } from '../survey.ts';

/**
 * One finding a run, at its worst step. A step of several whole spacings is a gap, which is another rule's business.
 * That a found run is meant to be even is only a guess: there a step has to stand out from the unsteadiness of all too.
 */
export const unevenSpacing: Rule = {
  id: 'uneven-spacing',
  title: 'Pins unevenly spaced along a line or curve',
  look: (survey) => survey.runs.filter((run) => run.even).flatMap((run) => worstStep(run, survey)),
};

function worstStep(run: CheckedRun, { pattern, options }: Survey): Finding[] {
  const steps = stepsAlong(run.pins, run.closed, pattern.pins);
  const offBy = (length: number) => Math.abs(length - run.spacing);
  const unsteadiness = median(steps.map(({ length }) => offBy(length))) * DEVIATIONS_A_MEDIAN;
  const allowed = Math.max(
    options.unevenStep * run.spacing,
    run.role === 'found' ? STANDS_OUT * unsteadiness : 0,
  );
  const uneven = steps.filter(
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

/** How many standard deviations a step has to be off, to stand out. Our own choice. */
const STANDS_OUT = 3.5;

/** Standard deviation of normally spread values by their median absolute deviation (F. R. Hampel, JASA 69 (1974) 383). */
const DEVIATIONS_A_MEDIAN = 1.4826;

/** Files carry 0.001 mm. */
const ROUNDING = 0.002;
