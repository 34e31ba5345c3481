import type { MissingPin } from '#pattern/structure.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { capital, sayPlace } from '../say.ts';
import { workedPlaces } from '../worked.ts';

/**
 * The rules for missing pins differ only in which structure calls for the pin, and in how a person would put it.
 * Where an area is worked the ground has no pins to lack.
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
    const isWorked = workedPlaces(survey);
    return regularity.missing
      .filter((missing) => calledForBy.includes(missing.why) && !(isGround(missing) && isWorked(missing)))
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

const isGround = ({ why }: MissingPin): boolean => why === 'lattice' || why === 'polar';
