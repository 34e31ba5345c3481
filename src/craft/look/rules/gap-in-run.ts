import { between } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { type CheckedRun, pinsLacking, stepsAlong } from '../runs.ts';
import { count, sayPins, sayPlace } from '../say.ts';
import type { Survey } from '../survey.ts';
import { gapRule } from './gaps.ts';

/** Missing pins that straightening found, and steps of a declared even run that are two or more spacings long. */
export const gapInRun: Rule = {
  id: 'gap-in-run',
  title: 'A pin missing from a line or curve of pins',
  look: (survey) => {
    const found = foundGaps.look(survey);
    const said = new PointIndex(found.flatMap(({ at }) => at ?? []));
    const declared = survey.runs.filter((run) => run.even && run.role !== 'found');
    return [...found, ...declared.flatMap((run) => longSteps(run, said, survey))];
  },
};

const foundGaps = gapRule('gap-in-run', '', ['run'], 'a pin is missing from a line or curve of pins');

function longSteps(run: CheckedRun, said: PointIndex, { pattern, options }: Survey): Finding[] {
  return stepsAlong(run.pins, run.closed, pattern.pins).flatMap(({ from, to, length }) => {
    const lacking = pinsLacking(length, run.spacing, options.unevenStep);
    if (lacking === 0) return [];
    const middle = between(pattern.pins[from]!, pattern.pins[to]!, 0.5);
    if (said.nearest(middle, length / 2) !== null) return [];
    return {
      rule: 'gap-in-run',
      severity: 'warning',
      at: middle,
      pins: [from, to],
      measured: { value: length, unit: pattern.unit },
      allowed: { value: run.spacing, unit: pattern.unit },
      sentence: `${count(lacking, 'pin is', 'pins are')} missing between ${sayPins([from, to])}, at ${sayPlace(middle, pattern.unit)}. Put ${lacking === 1 ? 'it' : 'them'} in, or leave the gap if it is meant.`,
    };
  });
}
