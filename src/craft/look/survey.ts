import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { anchorPoint } from '#pattern/anchors.ts';
import type { Anchor, Pattern } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';
import type { Regularity } from '#pattern/structure.ts';
import { groupsWithin } from './groups.ts';
import type { LookOptions } from './options.ts';
import { type CheckedRun, runsToCheck } from './runs.ts';
import { typicalSpacing } from './spacing.ts';

/** What is handed in to be looked over. The regularity belongs to the pattern: same pins, same order. */
export interface Inspection {
  readonly pattern: Pattern;
  readonly regularity: Regularity;
  readonly options: LookOptions;
}

/** An inspection with what several rules need, worked out once. */
export interface Survey extends Inspection {
  /** Pins that stand on one spot, the first of them leading; a pin that is alone is a group of one. */
  readonly spots: readonly (readonly number[])[];
  /** The leading pins, without those that double them; no two of them stand nearer than a doubled pin would. */
  readonly distinct: readonly number[];
  /** Typical distance from a pin to its nearest neighbour, in the pattern's unit; 0 with fewer than two pins. */
  readonly spacing: number;
  readonly runs: readonly CheckedRun[];
  /** Diameter of a hole, in the pattern's unit. */
  readonly hole: number;
  /** The distinct pins within `reach` of a place, as indices into the pattern's pins. */
  readonly near: (place: Point, reach: number) => number[];
  readonly nearest: (place: Point, reach: number) => number | null;
  /** Where a mark starts, bends or ends. Throws where it names a pin that is not there, which no file may. */
  readonly placeOf: (anchor: Anchor) => Point;
}

/** Time grows as n log n with the pins. Throws where the regularity is not of this pattern. */
export function survey(inspection: Inspection): Survey {
  const { pattern, regularity, options } = inspection;
  const { pins } = pattern;
  if (regularity.structureOf.length !== pins.length)
    throw new RangeError(
      `survey: regularity of ${regularity.structureOf.length} pins, pattern of ${pins.length}`,
    );
  const pinsOfId = pinsById(pattern);
  const hole = holeOf(pattern, options);
  const spots = groupsWithin(pins, hole * options.doubledWithin);
  const distinct = spots.map(([leader]) => leader!);
  const index = new PointIndex(distinct.map((leader) => pins[leader]!));
  const near = (place: Point, reach: number) => index.within(place, reach).map((at) => distinct[at]!);
  return {
    ...inspection,
    spots,
    distinct,
    spacing: typicalSpacing(pins, distinct, near),
    runs: runsToCheck(pattern, regularity, new Set(distinct)),
    hole,
    near,
    nearest: (place, reach) => distinct[index.nearest(place, reach) ?? -1] ?? null,
    placeOf: (anchor) => anchorPoint(pinsOfId, anchor),
  };
}

/**
 * Hole or pin as chosen for the pattern, else the usual one. In pixels no size is known: then a tenth of a pixel, which
 * only tells exact doubles.
 */
function holeOf({ unit, sizes }: Pattern, options: LookOptions): number {
  if (unit === 'px') return 0.1;
  return sizes.hole ?? sizes.pin ?? options.hole;
}
