import { inspection, pinsAt, type RuleCase, strip } from '../inspections.ts';

const speck = pinsAt([...strip, { x: 23, y: 24 }]);

export const cases: RuleCase[] = [
  {
    name: 'a speck',
    fires: inspection({ pins: speck }, { stray: [speck.length - 1] }),
    nearMiss: inspection({ pins: speck }),
    mended: inspection({}),
  },
];
