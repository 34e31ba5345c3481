import type { Rule } from '../rule.ts';

export const noScale: Rule = {
  id: 'no-scale',
  title: 'Nothing vouches for the size',
  look: ({ pattern }) => {
    if (pattern.unit === 'px')
      return [
        {
          rule: 'no-scale',
          severity: 'fault',
          at: null,
          pins: [],
          sentence:
            'The size of the pattern is not known, so that it cannot be printed to scale. Measure between two pins on the paper and trace again with that distance, or give the resolution of the scan.',
        },
      ];
    if (pattern.scale.from !== 'none') return [];
    return [
      {
        rule: 'no-scale',
        severity: 'warning',
        at: null,
        pins: [],
        sentence:
          'The pattern is in millimetres, but nothing says how its size was found. Measure between two pins on the paper and compare before you prick.',
      },
    ];
  },
};
