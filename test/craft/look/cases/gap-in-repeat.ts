import type { MissingPin } from '#pattern/structure.ts';
import { inspection, type RuleCase } from '../inspections.ts';

const gap = (confidence: number, why: MissingPin['why']) =>
  inspection({}, { missing: [{ x: 90, y: 40, confidence, structure: 's1', why }] });

export const cases: RuleCase[] = [
  { name: 'a gap', fires: gap(0.9, 'repeat'), nearMiss: gap(0.9, 'run'), mended: inspection({}) },
  {
    name: 'a gap that nothing settles',
    fires: gap(0.3, 'repeat'),
    nearMiss: gap(0.3, 'run'),
    mended: inspection({}),
  },
];
