import type { Point } from '#base/geometry/point.ts';
import { inspection, line, moved, pinsAt, type RuleCase, without } from '../inspections.ts';

const along = (places: readonly Point[], even = true) => {
  const pins = pinsAt(places);
  return inspection({
    pins,
    runs: [{ id: 'r', pins: pins.map((pin) => pin.id), shape: 'line', closed: false, role: 'other', even }],
  });
};
const found = (places: readonly Point[], even = true) =>
  inspection(
    { pins: pinsAt(places) },
    {
      structures: [
        {
          id: 's1',
          kind: 'run',
          shape: 'line',
          closed: false,
          even,
          spacing: 4,
          rms: 0,
          pins: places.map((_, at) => at),
        },
      ],
    },
  );

export const cases: RuleCase[] = [
  {
    name: 'a pin slid along a declared line',
    // 15 % of 4 mm is 0.6 mm.
    fires: along(moved(line, 4, { x: 0, y: 0.61 })),
    nearMiss: along(moved(line, 4, { x: 0, y: 0.59 })),
    mended: along(line),
  },
  {
    name: 'a pin slid along a line that was found',
    fires: found(moved(line, 4, { x: 0, y: -1 })),
    nearMiss: found(moved(line, 4, { x: 0, y: -1 }), false),
    mended: found(line),
  },
  {
    name: 'uneven pins, but not a whole gap',
    fires: along(moved(without(line, 6), 4, { x: 0, y: 1.5 })),
    nearMiss: along(without(line, 6)),
    mended: along(without(line, 6)),
  },
];
