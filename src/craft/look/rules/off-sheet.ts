import type { Point } from '#base/geometry/point.ts';
import type { Anchor, Area, Mark, SheetFrame } from '#pattern/pattern.ts';
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
  const off = [...pattern.marks, ...pattern.areas].flatMap(
    (marking) =>
      anchorsOf(marking)
        .map(placeOf)
        .find((place) => !isOn(sheet, place, 0)) ?? [],
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

function anchorsOf(marking: Mark | Area): readonly Anchor[] {
  if ('outline' in marking) return marking.outline;
  if ('path' in marking) return marking.path;
  return 'at' in marking ? [marking.at] : [marking.from, marking.to];
}

const isOn = ({ width, height }: SheetFrame, { x, y }: Point, margin: number): boolean =>
  x >= margin && y >= margin && x <= width - margin && y <= height - margin;
