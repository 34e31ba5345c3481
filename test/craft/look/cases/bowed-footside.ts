import type { Point } from '#base/geometry/point.ts';
import type { RunRole } from '#pattern/pattern.ts';
import type { RunStructure } from '#pattern/structure.ts';
import { inspection, line, moved, pinsAt, type RuleCase } from '../inspections.ts';

const footside = (places: readonly Point[], role: RunRole = 'footside', shape: 'line' | 'curve' = 'line') => {
  const pins = pinsAt(places);
  return inspection({
    pins,
    runs: [{ id: 'r', pins: pins.map((pin) => pin.id), shape, closed: false, role, even: false }],
  });
};

/** The line was found, not declared; a row of pins stands beside it, or on both sides of it. */
const edge = (places: readonly Point[], beside: readonly number[]) => {
  const structure: RunStructure = {
    id: 's1',
    kind: 'run',
    shape: 'line',
    closed: false,
    even: true,
    spacing: 4,
    rms: 0,
    pins: places.map((_, at) => at),
  };
  const others = beside.flatMap((x) => [20, 32, 44, 56].map((y) => ({ x: 30 + x, y })));
  return inspection({ pins: pinsAt([...places, ...others]) }, { structures: [structure] });
};

const bent = moved(line, 5, { x: 0.6, y: 0 });

export const cases: RuleCase[] = [
  {
    name: 'one pin off a declared footside',
    fires: footside(bent),
    nearMiss: footside(moved(line, 5, { x: 0.4, y: 0 })),
    mended: footside(line),
  },
  {
    name: 'a footside, not a headside',
    fires: footside(bent),
    nearMiss: footside(bent, 'headside'),
    mended: footside(line),
  },
  {
    name: 'a footside that is meant to be straight',
    fires: footside(bent),
    nearMiss: footside(bent, 'footside', 'curve'),
    mended: footside(line),
  },
  {
    name: 'a straight edge that looks like a footside',
    fires: edge(bent, [6]),
    nearMiss: edge(bent, [6, -6]),
    mended: edge(line, [6]),
  },
];
