import { between, distance } from '#base/geometry/point.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { capital, sayLength, sayPins } from '../say.ts';

/** The web, the card left between two holes: their distance less one hole. Said of patterns in millimetres only. */
export const nearlyTouching: Rule = {
  id: 'nearly-touching',
  title: 'Two holes so near that the card between them tears',
  look: ({ pattern, hole, options, distinct, near }) => {
    if (pattern.unit !== 'mm') return [];
    const card = pattern.sizes.cardThickness ?? options.cardThickness;
    const leastWeb = Math.max(options.leastWeb.share * card, options.leastWeb.floor);

    return distinct.flatMap((index) => {
      const pin = pattern.pins[index]!;
      const others = near(pin, hole + leastWeb).filter((other) => other > index);
      return others.sort(ascending).flatMap((other): Finding[] => {
        const apart = distance(pin, pattern.pins[other]!);
        const web = apart - hole;
        if (web >= leastWeb - ROUNDING) return [];
        const pair = capital(sayPins([index, other]));
        const sizes = `with ${sayLength(hole, 'mm')} holes in ${sayLength(card, 'mm')} card`;
        return [
          {
            rule: 'nearly-touching',
            severity: web <= 0 ? 'fault' : 'warning',
            at: between(pin, pattern.pins[other]!, 0.5),
            pins: [index, other],
            measured: { value: web, unit: 'mm' },
            allowed: { value: leastWeb, unit: 'mm' },
            sentence:
              web <= 0
                ? `${pair} stand ${sayLength(apart, 'mm')} apart; ${sizes} the two holes would run into one. Move one, or take it out.`
                : `${pair} stand ${sayLength(apart, 'mm')} apart; ${sizes} only ${sayLength(web, 'mm')} of card is left between them and would tear. Move one, use finer pins, or enlarge the pattern.`,
          },
        ];
      });
    });
  },
};

const ascending = (one: number, other: number): number => one - other;

/** Files carry 0.001 mm, so that two pins may each be half of that off. */
const ROUNDING = 0.001;
