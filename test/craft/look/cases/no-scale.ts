import { inspection, type RuleCase } from '../inspections.ts';

export const cases: RuleCase[] = [
  {
    name: 'pixels',
    fires: inspection({ unit: 'px', scale: { from: 'none' } }),
    nearMiss: inspection({ scale: { from: 'file', dpi: 300 } }),
    mended: inspection({ scale: { from: 'span', dpi: 301.5, length: 120 } }),
  },
  {
    name: 'millimetres that nothing vouches for',
    fires: inspection({ scale: { from: 'none' } }),
    nearMiss: inspection({ scale: { from: 'drafted' } }),
    mended: inspection({ scale: { from: 'given', dpi: 600 } }),
  },
];
