import { inspection, pinsAt, type RuleCase, strip } from '../inspections.ts';

const doubted = (confidence: number) =>
  inspection({
    pins: pinsAt(strip).map((pin, at) => (at === 7 ? { ...pin, confidence, doubt: ['faint', 'oval'] } : pin)),
  });

export const cases: RuleCase[] = [
  { name: 'a faint dot', fires: doubted(0.49), nearMiss: doubted(0.5), mended: inspection({}) },
];
