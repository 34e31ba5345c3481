import type { Area } from '#pattern/pattern.ts';
import { inspection, type RuleCase } from '../inspections.ts';

const area = (parts: Partial<Area>) =>
  inspection({
    areas: [{ id: 'a', outline: [{ pin: 'p1' }, { pin: 'p3' }, { x: 30, y: 40 }], ...parts }],
  });

export const cases: RuleCase[] = [
  {
    name: 'an area with no stitch',
    fires: area({}),
    nearMiss: area({ stitch: 'half' }),
    mended: area({ stitch: 'cloth' }),
  },
  {
    name: 'an area of some other stitch',
    fires: area({ stitch: 'other' }),
    nearMiss: area({ stitch: 'other', name: 'little wheels' }),
    mended: area({ name: 'little wheels' }),
  },
  {
    name: 'an area with an empty name',
    fires: area({ name: ' ' }),
    nearMiss: area({ name: 'x' }),
    mended: area({ stitch: 'filling', name: ' ' }),
  },
];
