import { machineWeb } from '#craft/look/options.ts';
import { inspection, pinsAt, type RuleCase, strip } from '../inspections.ts';

const sizes = { hole: 0.6, cardThickness: 0.8 };
const apart = (x: number, options = {}) =>
  inspection({ sizes, pins: pinsAt([...strip, { x: 20 + x, y: 20 }]) }, {}, options);

export const cases: RuleCase[] = [
  // The hand leaves half of 0.8 mm: 0.6 + 0.4 mm from centre to centre.
  { name: 'a web that tears', fires: apart(0.99), nearMiss: apart(1), mended: apart(2.5) },
  { name: 'two holes that run into one', fires: apart(0.5), nearMiss: apart(1), mended: apart(2.5) },
  {
    name: 'a web too thin for a machine',
    fires: apart(1.39, { leastWeb: machineWeb }),
    nearMiss: apart(1.4, { leastWeb: machineWeb }),
    mended: apart(1.39),
  },
  {
    name: 'card left under a quarter of a millimetre, however thin the card',
    fires: inspection({
      sizes: { hole: 0.4, cardThickness: 0.1 },
      pins: pinsAt([...strip, { x: 20.64, y: 20 }]),
    }),
    nearMiss: inspection({
      sizes: { hole: 0.4, cardThickness: 0.1 },
      pins: pinsAt([...strip, { x: 20.65, y: 20 }]),
    }),
    mended: inspection({
      sizes: { hole: 0.35, cardThickness: 0.1 },
      pins: pinsAt([...strip, { x: 20.64, y: 20 }]),
    }),
  },
];
