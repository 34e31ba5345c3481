import type { Anchor, Mark } from '#pattern/pattern.ts';
import { inspection, type RuleCase } from '../inspections.ts';

const marked = (...marks: Mark[]) => inspection({ marks });
const lineTo = (to: Anchor) => marked({ id: 'm', kind: 'line', from: { pin: 'p1' }, to });
const plaitTo = (to: Anchor) =>
  marked({ id: 'm', kind: 'plait', path: [{ pin: 'p1' }, { x: 23.1, y: 21 }, to] });
const picotAt = (at: Anchor) => marked({ id: 'm', kind: 'picot', at });

const meeting = (...ends: Anchor[]) =>
  marked(...ends.map((to, at): Mark => ({ id: `m${at}`, kind: 'line', from: { pin: `p${at + 1}` }, to })));

export const cases: RuleCase[] = [
  {
    name: 'four lines that meet where a pin is missing, once',
    fires: meeting({ x: 80, y: 80 }, { x: 80.1, y: 80 }, { x: 80, y: 79.9 }, { x: 80, y: 80 }),
    nearMiss: meeting({ pin: 'p9' }, { pin: 'p9' }, { pin: 'p9' }, { pin: 'p9' }),
    mended: meeting({ pin: 'p9' }, { pin: 'p9' }, { pin: 'p9' }, { pin: 'p9' }),
  },
  {
    name: 'two lines that end far apart, each for itself',
    fires: meeting({ x: 80, y: 80 }, { x: 90, y: 80 }),
    findings: 2,
    nearMiss: meeting({ pin: 'p7' }, { pin: 'p8' }),
    mended: meeting({ x: 80, y: 80 }, { pin: 'p8' }),
  },
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
