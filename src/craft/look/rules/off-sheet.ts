import type { Point } from '#base/geometry/point.ts';
import { anchorsOf } from '#pattern/anchors.ts';
import type { SheetFrame } from '#pattern/pattern.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { capital, count, sayPins } from '../say.ts';
import type { Survey } from '../survey.ts';

/** One finding for the holes and one for the markings, since a sheet that is too small is one mistake. */
export const offSheet: Rule = {
  id: 'off-sheet',
  title: 'A hole or a marking off the sheet',
  look: (survey) => {
    const { sheet } = survey.pattern;
    return sheet === undefined ? [] : [...holesOff(sheet, survey), ...markingsOff(sheet, survey)];
  },
};

function holesOff(sheet: SheetFrame, { pattern, hole }: Survey): Finding[] {
  const pins = pattern.pins.flatMap((pin, index) => (isOn(sheet, pin, hole / 2) ? [] : index));
  const first = pattern.pins[pins[0] ?? -1];
  if (first === undefined) return [];
  return [
    {
      rule: 'off-sheet',
      severity: 'fault',
      at: { x: first.x, y: first.y },
      pins,
      measured: { value: pins.length, unit: 'pins' },
      allowed: { value: 0, unit: 'pins' },
      sentence: `${count(pins.length, 'hole')} would lie over the edge of the sheet: ${sayPins(pins)}. Move the pattern on the sheet, or make the sheet larger.`,
    },
  ];
}

function markingsOff(sheet: SheetFrame, { pattern, placeOf }: Survey): Finding[] {
  const outlines = [...pattern.marks.map(anchorsOf), ...pattern.areas.map((area) => area.outline)];
  const off = outlines.flatMap(
    (outline) => outline.map(placeOf).find((place) => !isOn(sheet, place, 0)) ?? [],
  );
  const first = off[0];
  if (first === undefined) return [];
  return [
    {
      rule: 'off-sheet',
      severity: 'warning',
      at: { x: first.x, y: first.y },
      pins: [],
      sentence: `${capital(count(off.length, 'marking reaches', 'markings reach'))} over the edge of the sheet and would be cut off. Move the pattern on the sheet, or make the sheet larger.`,
    },
  ];
}

const isOn = ({ width, height }: SheetFrame, { x, y }: Point, margin: number): boolean =>
  x >= margin && y >= margin && x <= width - margin && y <= height - margin;
