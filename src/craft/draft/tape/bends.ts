import { curvature, type ParametricCurve } from '#base/geometry/motion.ts';
import { length } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Tape } from '#pattern/recipe/tape.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';

/**
 * Least radius of the inside edge of a bend, as a share of the spacing. Pins one spacing of arc apart on that radius
 * stand 0.89 of it apart in a straight line; on a tighter one they would crowd (common practice, no source).
 */
export const LEAST_INSIDE = 0.6;

/** Whether every bend of a middle line leaves room for the tape's inner edge; else how wide it may be at most. */
export function checkBends(curve: ParametricCurve, tape: Tape, at: number): Result<null, DraftTrouble> {
  const tightest = tightestBend(curve, tape.closed);
  const inside = LEAST_INSIDE * tape.spacing;
  if (tightest >= tape.width / 2 + inside) return done(null);
  const most = Math.floor(200 * (tightest - inside)) / 100;
  const works = most >= LEAST_WIDTH * tape.spacing;
  return failed({
    kind: 'recipe-figure',
    figure: `tapes.${at}.width`,
    given: tape.width,
    unit: 'mm',
    ...(works && { most, nearest: most }),
    why: 'bend-too-tight',
  });
}

/** Narrower than this, in spacings, a tape's two edges are no longer told apart (common practice, no source). */
const LEAST_WIDTH = 1.5;

/** Whether pins at the wanted spacing can stand, and the tape is wide enough for two edges of them. */
export function checkSizes({ spacing, width }: Tape, at: number): Result<null, DraftTrouble> {
  if (spacing < LEAST_SPACING) {
    const limits = { least: LEAST_SPACING, nearest: LEAST_SPACING, why: 'pins-too-close' } as const;
    return failed({
      kind: 'recipe-figure',
      figure: `tapes.${at}.spacing`,
      given: spacing,
      unit: 'mm',
      ...limits,
    });
  }
  const least = Math.ceil(100 * LEAST_WIDTH * spacing) / 100;
  if (width >= LEAST_WIDTH * spacing) return done(null);
  const limits = { least, nearest: least, why: 'too-narrow' } as const;
  return failed({ kind: 'recipe-figure', figure: `tapes.${at}.width`, given: width, unit: 'mm', ...limits });
}

const PER_SPAN = 32;
/** A turn of more than this where two curves meet is a corner, radians. */
const CORNER = 0.02;

/** The least radius along a curve, mm; 0 where it has a corner or stands still. */
export function tightestBend(curve: ParametricCurve, closed: boolean): number {
  if (hasCorner(curve, closed)) return 0;
  const bendAt = (t: number): number => Math.abs(curvature(curve.motionAt(t)));
  let most = 0;
  for (let span = 0; span < curve.spans; span++) {
    for (let k = 0; k <= PER_SPAN; k++) {
      // Just short of the end of a span, so that the bend there is its own and not the next one's.
      const t = span + Math.min(k / PER_SPAN, 1 - 1e-9);
      const bend = bendAt(t);
      if (!Number.isFinite(bend)) return 0;
      most = Math.max(most, bend < 0.9 * most ? bend : sharpest(bendAt, t, span));
    }
  }
  return 1 / most;
}

/** The sharpest bend within a sample's reach, by golden section (Kiefer 1953). */
function sharpest(bendAt: (t: number) => number, t: number, span: number): number {
  let low = Math.max(span, t - 1 / PER_SPAN);
  let high = Math.min(span + 1 - 1e-9, t + 1 / PER_SPAN);
  let most = bendAt(t);
  for (let round = 0; round < 24; round++) {
    const [p, q] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
    const [atP, atQ] = [bendAt(p), bendAt(q)];
    most = Math.max(most, atP, atQ);
    if (atP > atQ) high = q;
    else low = p;
  }
  return most;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

function hasCorner({ spans, motionAt }: ParametricCurve, closed: boolean): boolean {
  for (let joint = closed ? 0 : 1; joint < spans; joint++) {
    const before = motionAt((joint === 0 ? spans : joint) - 1e-9).velocity;
    const after = motionAt(joint).velocity;
    const turn = Math.atan2(before.x * after.y - before.y * after.x, before.x * after.x + before.y * after.y);
    if (Math.abs(turn) > CORNER || length(after) === 0 || length(before) === 0) return true;
  }
  return false;
}
