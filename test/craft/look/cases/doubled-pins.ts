import { inspection, pinsAt, type RuleCase, strip } from '../inspections.ts';

const beside = (x: number, copies = 1) =>
  inspection({
    sizes: { hole: 0.6 },
    pins: pinsAt([...strip, ...Array.from({ length: copies }, () => ({ x: 20 + x, y: 20 }))]),
  });

export const cases: RuleCase[] = [
  { name: 'two pins on one spot', fires: beside(0), nearMiss: beside(0.31), mended: inspection({}) },
  {
    name: 'two pins less than half a hole apart',
    fires: beside(0.29),
    nearMiss: beside(0.31),
    mended: beside(2.5),
  },
  {
    name: 'five pins on one spot, once',
    fires: beside(0.1, 4),
    nearMiss: beside(2.5),
    mended: inspection({}),
  },
];
