import { type Crossing, crossingsAmong, type SampledCurve, sampled } from '#base/geometry/crossings.ts';
import { distance, type Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { DraftTrouble } from '../trouble.ts';
import type { Band } from './band.ts';

/** Where bands lie over each other. Bands are named by their place in the list; later ones are sewn to earlier ones. */
export interface Overlaps {
  readonly crossings: readonly Crossing[];
  /** Whether a place of a band, at `parameter` of its middle line, lies within an earlier band or its own earlier part. */
  readonly isCovered: (band: number, parameter: number, place: Point) => boolean;
}

/** Bands that cross at a smaller angle lie on each other too long to be sewn; degrees (common practice, no source). */
const LEAST_ANGLE = 30;

/** This much of half the width counts as within: an edge that just touches is outside. */
const WITHIN = 0.97;

/** Samples stand this part of the narrowest band apart. */
const SAMPLE = 0.1;

export function findOverlaps(bands: readonly Band[]): Result<Overlaps, DraftTrouble> {
  const lines = bands.map(sampledBand);
  const crossings = crossingsAmong(lines);
  const tight = crossings.find(({ angle }) => angle < (LEAST_ANGLE * Math.PI) / 180);
  if (tight) return failed(tooSlanting(tight, bands[tight.later.curve]!.at));
  const samples = lines.flatMap(({ parameters, places }, band) =>
    places.map((place, k): Sample => {
      const parameter = parameters[k]!;
      return {
        band,
        place,
        at: bands[band]!.centre.lengthTo(parameter),
        half: bands[band]!.halfWidthAt(parameter),
      };
    }),
  );
  const index = new PointIndex(samples.map(({ place }) => place));
  const widest = Math.max(...bands.map(({ tape }) => tape.width)) / 2;

  /** The nearest earlier sample that a place lies within the band of; null where there is none. */
  const cover = (band: number, at: number, place: Point): Sample | null => {
    let found: Sample | null = null;
    for (const hit of index.within(place, widest)) {
      const sample = samples[hit]!;
      if (sample.band > band) continue;
      if (sample.band === band && at - sample.at < OWN_REACH * bands[band]!.tape.width) continue;
      if (distance(sample.place, place) >= WITHIN * sample.half) continue;
      if (found === null || distance(sample.place, place) < distance(found.place, place)) found = sample;
    }
    return found;
  };
  const beside = alongside(bands, crossings, lines, cover);
  if (beside !== null) return failed(beside);
  return done({
    crossings,
    isCovered: (band, parameter, place) =>
      cover(band, bands[band]!.centre.lengthTo(parameter), place) !== null,
  });
}

interface Sample {
  readonly band: number;
  readonly place: Point;
  /** Length along the middle line, mm. */
  readonly at: number;
  readonly half: number;
}

/** So many widths along the tape no part of it lies on its own: there a bend would be too tight. */
const OWN_REACH = 1.2;

function sampledBand({ curve, centre, tape }: Band): SampledCurve {
  const perSpan = Math.max(4, Math.ceil(centre.total / curve.spans / (SAMPLE * tape.width)));
  return sampled(curve, tape.closed, perSpan);
}

/** Bands that lie on each other though their middle lines do not cross near there: two legs of a bend too near. */
function alongside(
  bands: readonly Band[],
  crossings: readonly Crossing[],
  lines: readonly SampledCurve[],
  cover: (band: number, at: number, place: Point) => Sample | null,
): DraftTrouble | null {
  let worst: { readonly band: number; readonly other: number; readonly apart: number } | null = null;
  lines.forEach(({ parameters, curve }, band) => {
    const { centre, tape, edgePoint } = bands[band]!;
    const ends = tape.closed ? [] : [0, centre.total];
    const own = crossings.filter(({ later }) => later.curve === band);
    const met = own.map(({ later, angle, earlier }) => {
      const widths = (tape.width + bands[earlier.curve]!.tape.width) / 2;
      return { at: centre.lengthTo(later.parameter), reach: (REACH * widths) / Math.sin(angle) };
    });
    for (const parameter of parameters) {
      const at = centre.lengthTo(parameter);
      if (ends.some((end) => Math.abs(at - end) < REACH * tape.width)) continue;
      if (met.some(({ at: crossing, reach }) => Math.abs(at - crossing) < reach)) continue;
      for (const side of ['left', 'right'] as const) {
        const covering = cover(band, at, edgePoint(side, parameter));
        if (covering === null || isNearEnd(bands[covering.band]!, covering.at)) continue;
        const apart = distance(curve.motionAt(parameter).place, covering.place);
        if (worst === null || apart < worst.apart) worst = { band, other: covering.band, apart };
      }
    }
  });
  return worst === null ? null : tooNear(bands, worst);
}

/** How far from a crossing a band still lies on the other, in parts of what straight bands would. */
const REACH = 1.6;

const isNearEnd = ({ tape, centre }: Band, at: number): boolean =>
  !tape.closed && (at < REACH * tape.width || at > centre.total - REACH * tape.width);

function tooNear(
  bands: readonly Band[],
  { band, other, apart }: { readonly band: number; readonly other: number; readonly apart: number },
): DraftTrouble {
  const { tape } = bands[band]!;
  const room = band === other ? apart : 2 * apart - bands[other]!.tape.width;
  const most = Math.floor(100 * room) / 100;
  return {
    kind: 'recipe-figure',
    figure: `tapes.${bands[band]!.at}.width`,
    given: tape.width,
    unit: 'mm',
    ...(most >= tape.spacing && { most, nearest: most }),
    why: 'crosses-too-tightly',
  };
}

function tooSlanting({ angle }: Crossing, at: number): DraftTrouble {
  return {
    kind: 'recipe-figure',
    figure: `tapes.${at}.course`,
    given: Math.round((angle * 1800) / Math.PI) / 10,
    unit: 'degrees',
    least: LEAST_ANGLE,
    nearest: LEAST_ANGLE,
    why: 'crosses-too-tightly',
  };
}
