import { cubicChain } from '#base/geometry/cubic-chain.ts';
import type { Cubic } from '#base/geometry/curve.ts';
import type { ParametricCurve } from '#base/geometry/motion.ts';
import { distance, type Point, subtract } from '#base/geometry/point.ts';
import { periodicSpline, splineThrough } from '#base/geometry/spline.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Again, Tape, TapeCourse } from '#pattern/recipe/tape.ts';
import type { DraftTrouble } from '../trouble.ts';
import { copyName, inCopy } from './again.ts';

/** The middle line of one tape; `at` says which tape of the recipe it is, from 0. */
export interface CentreLine {
  readonly id: string;
  readonly at: number;
  /** How many times the course comes again along it. */
  readonly copies: number;
  readonly curve: ParametricCurve;
}

/**
 * The middle lines that a tape of the recipe makes. Where all comes again by a step an open tape goes on along it, and
 * where by a turn a closed one goes round; other tapes are copied.
 */
export function centreLines(
  tape: Tape,
  at: number,
  again: Again | undefined,
): Result<CentreLine[], DraftTrouble> {
  const goesOn = again !== undefined && (again.kind === 'turn') === tape.closed;
  const copies = again?.count ?? 1;
  const cubics = 'through' in tape.course ? throughPoints : asDrawn;
  const lines: CentreLine[] = [];
  for (let copy = 0; copy < (goesOn ? 1 : copies); copy++) {
    const line = cubics(tape.course as never, {
      figure: `tapes.${at}.course`,
      closed: tape.closed,
      again: goesOn ? again : undefined,
      moved: (place) => inCopy(again, copy, place),
    });
    if (!line.ok) return line;
    const id = `t${at + 1}${goesOn ? '' : copyName(again, copy)}`;
    lines.push({ id, at, copies: goesOn ? copies : 1, curve: cubicChain(line.value) });
  }
  return done(lines);
}

interface Wish {
  readonly figure: string;
  readonly closed: boolean;
  /** How the line goes on; undefined where it is drawn once. */
  readonly again: Again | undefined;
  readonly moved: (place: Point) => Point;
}

/** Nearer points of a course are one. */
const LEAST_STEP = 0.01;

function throughPoints(
  { through }: Extract<TapeCourse, { through: unknown }>,
  { figure, closed, again, moved }: Wish,
): Result<Cubic[], DraftTrouble> {
  const turned = again?.kind === 'turn' ? again : undefined;
  const points = Array.from({ length: turned?.count ?? 1 }, (_, copy) =>
    through.map((place) => inCopy(turned, copy, place)),
  )
    .flat()
    .map(moved);
  const least = closed ? 3 : again ? 1 : 2;
  if (points.length < least) {
    return failed(trouble(`${figure}.through`, points.length, 'count', { least, nearest: least }));
  }
  const step = again?.kind === 'step' ? again.step : { x: 0, y: 0 };
  const isPeriodic = closed || again !== undefined;
  const onward = isPeriodic ? [...points, { x: points[0]!.x + step.x, y: points[0]!.y + step.y }] : points;
  const near = onward.slice(1).findIndex((point, k) => distance(point, onward[k]!) < LEAST_STEP);
  if (near >= 0) {
    const away = distance(onward[near]!, onward[near + 1]!);
    return failed(trouble(`${figure}.through.${near % through.length}`, away, 'mm', { least: LEAST_STEP }));
  }
  if (!isPeriodic) return done(splineThrough(points));
  const period = periodicSpline(points, step);
  return done(again?.kind === 'step' ? repeated(period, again) : period);
}

function asDrawn(
  { from, curves }: Extract<TapeCourse, { curves: unknown }>,
  { figure, closed, again, moved }: Wish,
): Result<Cubic[], DraftTrouble> {
  const own = curves.map(({ first, second, to }, k): Cubic => [curves[k - 1]?.to ?? from, first, second, to]);
  const all = again ? repeated(own, again) : own;
  const meets = closed ? from : again ? inCopy(again, 1, from) : null;
  const miss = meets === null ? 0 : distance(closed ? all.at(-1)![3] : own.at(-1)![3], meets);
  if (miss > LEAST_STEP) {
    return failed(trouble(`${figure}.curves.${curves.length - 1}.to`, miss, 'mm', { most: LEAST_STEP }));
  }
  return done(all.map((cubic) => cubic.map(moved) as unknown as Cubic));
}

const repeated = (period: readonly Cubic[], again: Again): Cubic[] =>
  Array.from({ length: again.count }, (_, copy) =>
    period.map((cubic) => cubic.map((place) => inCopy(again, copy, place)) as unknown as Cubic),
  ).flat();

const trouble = (
  figure: string,
  given: number,
  unit: DraftTrouble['unit'],
  limits: Pick<DraftTrouble, 'least' | 'most' | 'nearest'>,
): DraftTrouble => ({ kind: 'recipe-figure', figure, given, unit, ...limits, why: 'does-not-fit' });

/** Whether all of a curve lies on the straight line between its ends. */
export function isStraight({ spans, motionAt }: ParametricCurve): boolean {
  const from = motionAt(0).place;
  const way = subtract(motionAt(spans).place, from);
  const size = Math.hypot(way.x, way.y);
  return Array.from({ length: 8 * spans + 1 }, (_, k) => motionAt(k / 8).place).every(
    ({ x, y }) => Math.abs((x - from.x) * way.y - (y - from.y) * way.x) <= 1e-6 * size,
  );
}
