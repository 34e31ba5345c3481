import { inspection, pinsAt, type RuleCase, strip } from '../inspections.ts';

const doubted = (confidence: number) =>
  inspection({
    pins: pinsAt(strip).map((pin, at) => (at === 7 ? { ...pin, confidence, doubt: ['faint', 'oval'] } : pin)),
  });

/** The ground calls for every pin. */
const called = (confidence: number) => {
  const doubtful = doubted(confidence);
  return inspection(doubtful.pattern, { structureOf: strip.map(() => 'ground') });
};

export const cases: RuleCase[] = [
  { name: 'a faint dot', fires: doubted(0.49), nearMiss: doubted(0.5), mended: inspection({}) },
  {
    name: 'a faint dot that the ground calls for',
    fires: called(0.3),
    nearMiss: called(0.6),
    mended: inspection({}),
  },
];
