import type { Point } from '#base/geometry/point.ts';
import { inspection, line, moved, pinsAt, type RuleCase, without } from '../inspections.ts';

const run = (places: readonly Point[], even = true, closed = false) => {
  const pins = pinsAt(places);
  return inspection({
    pins,
    runs: [{ id: 'r', pins: pins.map((pin) => pin.id), shape: 'line', closed, role: 'other', even }],
  });
};
const circle = Array.from({ length: 24 }, (_, at) => ({
  x: 60 + 20 * Math.cos((at * Math.PI) / 12),
  y: 60 + 20 * Math.sin((at * Math.PI) / 12),
}));
const missing = [{ x: 30, y: 40, confidence: 0.9, structure: 's1', why: 'run' as const }];

export const cases: RuleCase[] = [
  {
    name: 'a pin left out of a declared line',
    fires: run(without(line, 5)),
    nearMiss: run(without(line, 5), false),
    mended: run(line),
  },
  {
    name: 'the last pin left out of a closed curve',
    fires: run(without(circle, 23), true, true),
    nearMiss: run(without(circle, 23), true, false),
    mended: run(circle, true, true),
  },
  {
    name: 'two pins left out in a row, in one finding',
    fires: run(without(without(line, 5), 5)),
    nearMiss: run(moved(line, 5, { x: 0, y: 1 })),
    mended: run(line),
  },
  {
    name: 'a gap that straightening found, said once',
    fires: { ...run(without(line, 5)), regularity: { ...run(without(line, 5)).regularity, missing } },
    nearMiss: inspection({}, { missing: [{ ...missing[0]!, why: 'lattice' }] }),
    mended: run(line),
  },
];
