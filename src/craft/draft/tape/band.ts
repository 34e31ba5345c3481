import { ArcLength } from '#base/geometry/arc-length.ts';
import type { ParametricCurve } from '#base/geometry/motion.ts';
import { besideCurve, speedBeside } from '#base/geometry/offset.ts';
import { length, type Point } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Tape } from '#pattern/recipe/tape.ts';
import type { DraftTrouble } from '../trouble.ts';
import type { CentreLine } from './centre-line.ts';

export type Side = 'left' | 'right';

/** The band of a tape along its middle line; at a pointed end both edges run together to a tip on that line. */
export interface Band {
  readonly id: string;
  readonly tape: Tape;
  /** Which tape of the recipe it is, from 0. */
  readonly at: number;
  /** How many times the course comes again along it. */
  readonly copies: number;
  readonly curve: ParametricCurve;
  readonly centre: ArcLength;
  /** How far both edges lie from the middle line there, mm. */
  readonly halfWidthAt: (t: number) => number;
  readonly edgePoint: (side: Side, t: number) => Point;
  readonly edgeLength: (side: Side) => ArcLength;
}

/** How long a pointed end is, in widths. */
const POINT_LENGTH = 1.2;

/** A span is measured in so many pieces: splines and Bezier curves of one span bend but a few times. */
const PIECES = 4;

/** Fewer spaces than this along the middle line make no tape. */
const LEAST_SPACES = 4;

/** The band of a tape, or by how much its middle line is too short for its ends. */
export function bandOf({ id, at, curve, copies }: CentreLine, tape: Tape): Result<Band, DraftTrouble> {
  const { spans, motionAt } = curve;
  const pieces = PIECES * spans;
  const centre = new ArcLength((t) => length(motionAt(t).velocity), 0, spans, pieces);
  const taper = POINT_LENGTH * tape.width;
  const points = tape.closed ? 0 : [tape.start, tape.finish].filter((end) => end === 'pointed').length;
  const least = LEAST_SPACES * tape.spacing * copies + points * taper;
  if (centre.total < least) {
    const given = centre.total;
    const figure = `tapes.${at}.course`;
    return failed({
      kind: 'recipe-figure',
      figure,
      given,
      unit: 'mm',
      least,
      nearest: least,
      why: 'does-not-fit',
    });
  }
  const isPointed = (end: 'start' | 'finish'): boolean => !tape.closed && tape[end] === 'pointed';
  const flatFrom = isPointed('start') ? centre.parameterAt(taper) : 0;
  const flatTo = isPointed('finish') ? centre.parameterAt(centre.total - taper) : spans;

  /** How much of a taper's length lies behind, from 0 at the tip to 1 where the band is whole; and its sense. */
  const taperAt = (t: number): readonly [number, number] => {
    if (t < flatFrom) return [centre.lengthTo(t) / taper, 1];
    if (t > flatTo) return [(centre.total - centre.lengthTo(t)) / taper, -1];
    return [1, 0];
  };
  const halfWidthAt = (t: number): number => (tape.width / 2) * (1 - (1 - taperAt(t)[0]) ** 2);
  const growthAt = (t: number): number => {
    const [share, sense] = taperAt(t);
    return sense === 0 ? 0 : (sense * tape.width * (1 - share) * length(motionAt(t).velocity)) / taper;
  };
  const signOf = (side: Side): number => (side === 'left' ? 1 : -1);
  return done({
    id,
    at,
    tape,
    copies,
    curve,
    centre,
    halfWidthAt,
    edgePoint: (side, t) => besideCurve(motionAt(t), signOf(side) * halfWidthAt(t)),
    edgeLength: (side) =>
      new ArcLength(
        (t) => speedBeside(motionAt(t), signOf(side) * halfWidthAt(t), signOf(side) * growthAt(t)),
        0,
        spans,
        pieces,
      ),
  });
}
