import { inspection, moved, pinsAt, type RuleCase, strip } from '../inspections.ts';

const sizes = { hole: 0.6 };
const corner = (x: number) => inspection({ sizes, pins: pinsAt([{ x, y: 10 }, ...strip]) });
const line = (x: number) =>
  inspection({ marks: [{ id: 'm', kind: 'gimp', path: [{ pin: 'p1' }, { x, y: 30 }], closed: false }] });

export const cases: RuleCase[] = [
  { name: 'a hole over the edge', fires: corner(0.25), nearMiss: corner(0.3), mended: corner(5) },
  { name: 'a gimp that leaves the sheet', fires: line(210.1), nearMiss: line(210), mended: line(150) },
  {
    name: 'many holes, in one finding',
    fires: inspection({ sheet: { width: 40, height: 40 } }),
    nearMiss: inspection({ sheet: { width: 47.75, height: 57.75 } }),
    mended: inspection({ sheet: { width: 210, height: 297 } }),
  },
  {
    name: 'a hole far off, but only where the sheet is known',
    fires: inspection({ pins: pinsAt(moved(strip, 0, { x: 0, y: 500 })) }),
    nearMiss: (({ pattern: { sheet: _, ...pattern }, ...rest }) => ({ ...rest, pattern }))(
      inspection({ pins: pinsAt(moved(strip, 0, { x: 0, y: 500 })) }),
    ),
    mended: inspection({}),
  },
];
