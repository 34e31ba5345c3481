import type { Anchor, Mark } from '#pattern/pattern.ts';
import { inspection, type RuleCase } from '../inspections.ts';

const marked = (...marks: Mark[]) => inspection({ marks });
const lineTo = (to: Anchor) => marked({ id: 'm', kind: 'line', from: { pin: 'p1' }, to });
const plaitTo = (to: Anchor) =>
  marked({ id: 'm', kind: 'plait', path: [{ pin: 'p1' }, { x: 23.1, y: 21 }, to] });
const picotAt = (at: Anchor) => marked({ id: 'm', kind: 'picot', at });

export const cases: RuleCase[] = [
  {
    name: 'a line that ends where no pin stands',
    fires: lineTo({ x: 80, y: 80 }),
    nearMiss: lineTo({ pin: 'p7' }),
    mended: lineTo({ pin: 'p2' }),
  },
  {
    name: 'a line that ends just beside a pin',
    fires: lineTo({ x: 25.3, y: 20.2 }),
    nearMiss: lineTo({ pin: 'p2' }),
    mended: lineTo({ pin: 'p2' }),
  },
  {
    name: 'a plait, which may bend anywhere but not end there',
    fires: plaitTo({ x: 22, y: 60.5 }),
    nearMiss: plaitTo({ pin: 'p9' }),
    mended: plaitTo({ pin: 'p9' }),
  },
  {
    name: 'a picot beside its pin, where a gimp may lie',
    fires: picotAt({ x: 20.1, y: 20 }),
    nearMiss: marked({
      id: 'm',
      kind: 'gimp',
      path: [
        { x: 20.1, y: 20 },
        { x: 27, y: 33 },
      ],
      closed: false,
    }),
    mended: picotAt({ pin: 'p1' }),
  },
];
