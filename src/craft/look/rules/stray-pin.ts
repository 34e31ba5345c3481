import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { sayPlace } from '../say.ts';

export const strayPin: Rule = {
  id: 'stray-pin',
  title: 'A pin that belongs to nothing round it',
  look: ({ pattern, regularity }) =>
    regularity.stray.map((index): Finding => {
      const { x, y } = pattern.pins[index]!;
      return {
        rule: 'stray-pin',
        severity: 'warning',
        at: { x, y },
        pins: [index],
        sentence: `Pin ${index + 1}, at ${sayPlace({ x, y }, pattern.unit)}, fits nothing round it and may be a speck on the paper. Compare with the paper; take it out if it is no pin.`,
      };
    }),
};
