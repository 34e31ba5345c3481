import { distance } from '#base/geometry/point.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { capital, sayLength, sayPins, sayPlace } from '../say.ts';

export const doubledPins: Rule = {
  id: 'doubled-pins',
  title: 'One pin marked twice',
  look: ({ pattern, spots, hole, options }) =>
    spots.flatMap((pins): Finding[] => {
      if (pins.length === 1) return [];
      const at = pattern.pins[pins[0]!]!;
      const apart = pins.reduce((most, index) => Math.max(most, distance(at, pattern.pins[index]!)), 0);
      return [
        {
          rule: 'doubled-pins',
          severity: 'fault',
          at: { x: at.x, y: at.y },
          pins,
          measured: { value: apart, unit: pattern.unit },
          allowed: { value: hole * options.doubledWithin, unit: pattern.unit },
          sentence: `${capital(sayPins(pins))} stand on one spot, ${sayLength(apart, pattern.unit)} apart, at ${sayPlace(at, pattern.unit)}. Keep one of them.`,
        },
      ];
    }),
};
