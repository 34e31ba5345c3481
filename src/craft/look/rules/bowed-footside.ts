import { fitStraight, offLine } from '#base/fit/straight.ts';
import { convexHull } from '#base/geometry/hull.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import type { CheckedRun } from '../runs.ts';
import { sayLength, sayPlace } from '../say.ts';
import type { Survey } from '../survey.ts';

/**
 * The footside is sewn to cloth, so that it has to be straight. Where the pattern does not say which run is the
 * footside, a straight run of pins along the outside of the pattern is taken for one, and the finding is only a note.
 */
export const bowedFootside: Rule = {
  id: 'bowed-footside',
  title: 'A footside that is not straight',
  look: (survey) => {
    const declared = survey.runs.filter((run) => run.role === 'footside');
    const straight = declared.length > 0 ? declared.filter((run) => run.straight) : straightEdges(survey);
    return straight.flatMap((run) => bow(run, survey));
  },
};

function bow({ role, pins, spacing }: CheckedRun, { pattern, options }: Survey): Finding[] {
  const line = fitStraight(pins.map((index) => pattern.pins[index]!));
  const off = (index: number) => Math.abs(offLine(line, pattern.pins[index]!));
  const worst = pins.reduce((one, other) => (off(other) > off(one) ? other : one));
  const allowed = options.footsideBow * spacing;
  if (off(worst) <= allowed + ROUNDING) return [];
  const { unit } = pattern;
  const { x, y } = pattern.pins[worst]!;
  const what = role !== 'footside' ? 'straight edge, which looks like a footside,' : 'footside';
  return [
    {
      rule: 'bowed-footside',
      severity: role === 'footside' ? 'warning' : 'note',
      at: { x, y },
      pins: [worst],
      measured: { value: off(worst), unit },
      allowed: { value: allowed, unit },
      sentence: `The ${what} is not straight: pin ${worst + 1}, at ${sayPlace({ x, y }, unit)}, stands ${sayLength(off(worst), unit)} off its line. Move it back on to the line, or straighten the pattern.`,
    },
  ];
}

/** Straight runs with the whole pattern on one side of them. */
function straightEdges({ pattern, runs, distinct }: Survey): CheckedRun[] {
  const hull = convexHull(distinct.map((index) => pattern.pins[index]!));
  return runs.filter(({ role, straight, pins, spacing }) => {
    if ((role !== 'found' && role !== 'other') || !straight || pins.length < LEAST_PINS) return false;
    const line = fitStraight(pins.map((index) => pattern.pins[index]!));
    const sides = hull.map((corner) => offLine(line, corner));
    return Math.min(Math.max(...sides), -Math.min(...sides)) < spacing / 2;
  });
}

/** Fewer pins in a row on the outside are more likely the side of a motif. Our own choice. */
const LEAST_PINS = 8;

/** Files carry 0.001 mm. */
const ROUNDING = 0.002;
