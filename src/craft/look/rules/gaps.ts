import type { MissingPin } from '#pattern/structure.ts';
import { beyondEdges } from '../beyond.ts';
import type { Finding } from '../finding.ts';
import { groundPins } from '../ground-pins.ts';
import type { Rule } from '../rule.ts';
import { capital, sayPlace } from '../say.ts';
import type { Survey } from '../survey.ts';
import { workedPlaces } from '../worked.ts';

/**
 * The rules for missing pins differ only in which structure calls for the pin, and in how a person would put it.
 * Where an area is worked the ground has no pins to lack, and beyond an edge nothing has.
 */
export const gapRule = (
  id: string,
  title: string,
  calledForBy: readonly MissingPin['why'][],
  words: string,
): Rule => ({
  id,
  title,
  look: (survey) => {
    const { pattern, regularity, options } = survey;
    const called = regularity.missing.filter(({ why }) => calledForBy.includes(why));
    if (called.length === 0) return [];
    const isGround = calledByGround(survey);
    const isWorked = workedPlaces(survey);
    const isBeyond = beyondEdges(survey);
    return called
      .filter((missing) => !(isGround(missing) && isWorked(missing)))
      .filter((missing) => (missing.why === 'run' && !isGround(missing)) || !isBeyond(missing))
      .map(({ x, y, confidence }): Finding => {
        const sure = confidence >= options.sureGap;
        const place = sayPlace({ x, y }, pattern.unit);
        return {
          rule: id,
          severity: sure ? 'warning' : 'note',
          at: { x, y },
          pins: [],
          measured: { value: confidence, unit: 'share' },
          allowed: { value: options.sureGap, unit: 'share' },
          sentence: sure
            ? `${capital(words)} at ${place}. Put the pin in, or leave the gap if it is meant.`
            : `Perhaps ${words} at ${place}; the pins round it do not settle it. Compare with the paper.`,
        };
      });
  },
});

/** Whether ground calls for a pin: a lattice does, or a row of pins most of which are the ground's own. */
function calledByGround({ pattern, regularity }: Survey): (missing: MissingPin) => boolean {
  const ground = groundPins(pattern);
  const rows = new Set(
    regularity.structures.flatMap((structure) => {
      if (structure.kind !== 'run') return [];
      const own = structure.pins.filter((index) => ground.has(pattern.pins[index]!.id)).length;
      return own * 2 > structure.pins.length ? [structure.id] : [];
    }),
  );
  return ({ why, structure }) =>
    why === 'lattice' || why === 'polar' || (why === 'run' && rows.has(structure));
}
