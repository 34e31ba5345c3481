import type { Point } from '#base/geometry/point.ts';
import type { RepeatStructure } from '#pattern/structure.ts';
import { inspection, pinsAt, type RuleCase, strip } from '../inspections.ts';

const stated = (step: Point, places: readonly Point[] = strip) =>
  inspection({ pins: pinsAt(places), repeat: { step } });

/** Four rows a repeat, four repeats; the last two shifted. */
const pasted = (shift: number) => {
  const places = strip.map(({ x, y }) => (y >= 40 ? { x, y: y + shift } : { x, y }));
  const structure: RepeatStructure = {
    id: 's1',
    kind: 'repeat',
    step: { x: 0, y: 10 },
    copies: 4,
    rms: 0,
    tracks: Array.from({ length: 24 }, (_, track) => [0, 1, 2, 3].map((copy) => copy * 24 + track)),
  };
  return inspection({ pins: pinsAt(places) }, { structures: [structure] });
};

/** No row like another, so that only the true repeat carries pins on to pins. */
const uneven = [0, 1, 2].flatMap((copy) =>
  [0, 3, 4.5, 9, 11, 16].map((x, row) => ({ x: 20 + x, y: 20 + 20 * copy + 3 * row + 0.1 * row * row })),
);

export const cases: RuleCase[] = [
  {
    name: 'a repeat stated too long',
    // The pins stand 3.54 mm from their nearest: a tenth of that is allowed.
    fires: stated({ x: 0, y: 10.4 }),
    nearMiss: stated({ x: 0, y: 10.3 }),
    mended: stated({ x: 0, y: 10 }),
  },
  {
    name: 'a repeat whose pins do not come again',
    fires: stated({ x: 7, y: 13 }, uneven),
    nearMiss: stated({ x: 0, y: 20 }, uneven),
    mended: stated({ x: 0, y: 40 }, uneven),
  },
  {
    name: 'two copies pasted together out of step',
    fires: pasted(0.5),
    nearMiss: pasted(0.3),
    mended: pasted(0),
  },
  {
    name: 'a stated repeat of which more than one is drawn',
    fires: stated({ x: 0, y: 20.5 }, uneven),
    nearMiss: stated({ x: 0, y: 20.5 }, uneven.slice(0, 6)),
    mended: stated({ x: 0, y: 20 }, uneven),
  },
];
