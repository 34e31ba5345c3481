import { boxHolds, boxOf, growBox } from '#base/geometry/box.ts';
import { add, length, type Point, subtract } from '#base/geometry/point.ts';
import type { RepeatStructure } from '#pattern/structure.ts';
import type { Finding } from '../finding.ts';
import type { Rule } from '../rule.ts';
import { sayLength } from '../say.ts';
import { median } from '../spacing.ts';
import type { Survey } from '../survey.ts';

/**
 * Where one repeat ends the next must begin. Two ways to miss: the repeat's stated length does not carry the pins on to
 * the next repeat's, or one drawn repeat is set beside its neighbour out of step (as when copies are pasted together).
 */
export const repeatEnds: Rule = {
  id: 'repeat-ends',
  title: 'A repeat whose ends do not meet',
  look: (survey) => [
    ...statedStep(survey),
    ...survey.regularity.structures.flatMap((structure) =>
      structure.kind === 'repeat' ? joins(structure, survey) : [],
    ),
  ],
};

function statedStep(survey: Survey): Finding[] {
  const { pattern, distinct, spacing } = survey;
  const step = pattern.repeat?.step;
  if (step === undefined || distinct.length < 2) return [];
  const pins = distinct.map((index) => pattern.pins[index]!);
  const drawn = growBox(boxOf(pins), spacing / 4);
  const stride = Math.ceil(pins.length / SAMPLES);
  const carried = pins
    .filter((_, at) => at % stride === 0)
    .map((pin) => add(pin, step))
    .filter((place) => boxHolds(drawn, place));
  if (carried.length < LEAST_PAIRS) return [];
  const misses = carried.flatMap((place) => {
    const met = survey.nearest(place, spacing / 2);
    return met === null ? [] : subtract(pattern.pins[met]!, place);
  });
  if (misses.length * 2 <= carried.length)
    return [
      finding(survey, null, undefined, [
        `The repeat is stated as ${sayLength(length(step), pattern.unit)} long, but so far on most pins do not come again.`,
        'Measure from a pin to the same pin of the next repeat.',
      ]),
    ];
  const miss = middleOf(misses);
  const off = length(miss);
  if (off <= allowedMiss(survey)) return [];
  const better = length(add(step, miss));
  return [
    finding(survey, null, off, [
      `The ends of the repeat do not meet: stated as ${sayLength(length(step), pattern.unit)} long, it brings the pins ${sayLength(off, pattern.unit)} beside those of the next.`,
      `Make it ${sayLength(better, pattern.unit)}, or move the pins.`,
    ]),
  ];
}

function joins({ step, copies, tracks }: RepeatStructure, survey: Survey): Finding[] {
  const { pins, unit } = survey.pattern;
  return Array.from({ length: Math.max(0, copies - 1) }, (_, copy) => copy).flatMap((copy) => {
    const pairs = tracks.flatMap((track) => {
      const [from, to] = [track[copy], track[copy + 1]];
      return from === null || from === undefined || to === null || to === undefined
        ? []
        : [[from, to] as const];
    });
    const miss = middleOf(pairs.map(([from, to]) => subtract(subtract(pins[to]!, pins[from]!), step)));
    const off = length(miss);
    if (pairs.length < LEAST_PAIRS || off <= allowedMiss(survey)) return [];
    return finding(survey, pins[pairs[0]![1]]!, off, [
      `Repeat ${copy + 2} is set ${sayLength(off, unit)} out of step with repeat ${copy + 1}, so that their ends do not meet.`,
      'Move it into step, or straighten the pattern.',
    ]);
  });
}

const finding = (
  { pattern, options, spacing }: Survey,
  at: Point | null,
  off: number | undefined,
  sentences: readonly string[],
): Finding => ({
  rule: 'repeat-ends',
  severity: 'warning',
  at: at && { x: at.x, y: at.y },
  pins: [],
  ...(off !== undefined && { measured: { value: off, unit: pattern.unit } }),
  allowed: { value: options.repeatMiss * spacing, unit: pattern.unit },
  sentence: sentences.join(' '),
});

/** Files carry 0.001 mm. */
const allowedMiss = ({ options, spacing }: Survey): number => options.repeatMiss * spacing + 0.002;

/** The median a coordinate, so that a few pins that differ between repeats do not count. */
const middleOf = (steps: readonly Point[]): Point => ({
  x: median(steps.map(({ x }) => x)),
  y: median(steps.map(({ y }) => y)),
});

/** Fewer pins in common say little about where a repeat lies. Our own choice. */
const LEAST_PAIRS = 3;

/** Pins carried on, taken evenly through the list: more of them would not change a median. */
const SAMPLES = 4000;
