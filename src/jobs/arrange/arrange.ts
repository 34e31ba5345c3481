import { heightOf, widthOf } from '#base/geometry/box.ts';
import { type Point, scale, subtract } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import {
  joinPatterns,
  mirrorPattern,
  reangleGround,
  repeatPattern,
  shiftPattern,
  turnPattern,
} from '#craft/draft/arrange/index.ts';
import type { Pattern, Pin } from '#pattern/pattern.ts';
import { boxOfPins, findPin } from '#pattern/pins.ts';
import { scalePattern } from '#pattern/scale.ts';
import { MOST_PINS } from '../open.ts';
import type { Trouble } from '../trouble.ts';
import type { ArrangeStep, PinOnPin } from './steps.ts';

/** A pattern after it was arranged, and its size from outermost pin to outermost pin. */
export interface Arranged {
  readonly pattern: Pattern;
  readonly width: number;
  readonly height: number;
}

/** Does one step after the other, in their order. */
export function arrangePattern(pattern: Pattern, steps: readonly ArrangeStep[]): Result<Arranged, Trouble> {
  let arranged = pattern;
  for (const step of steps) {
    const next = arrange(arranged, step);
    if (!next.ok) return next;
    const { length } = next.value.pins;
    if (length > MOST_PINS) return failed({ kind: 'too-many-pins', count: length, limit: MOST_PINS });
    arranged = next.value;
  }
  const box = boxOfPins(arranged);
  return done({ pattern: arranged, width: widthOf(box), height: heightOf(box) });
}

function arrange(pattern: Pattern, step: ArrangeStep): Result<Pattern, Trouble> {
  switch (step.kind) {
    case 'mirror': {
      const line = radians(step.line);
      const direction = { x: Math.cos(line), y: Math.sin(line) };
      return done(mirrorPattern(pattern, { through: middleOf(pattern), direction }));
    }
    case 'turn':
      return done(turnPattern(pattern, radians(step.degrees), middleOf(pattern)));
    case 'scale':
      return done(scalePattern(pattern, step.factor));
    case 'ground-angle': {
      const from = step.from ?? groundAngleOf(pattern);
      return from === null
        ? failed({ kind: 'no-ground-angle' })
        : madeOf(reangleGround(pattern, radians(from), radians(step.to)));
    }
    case 'repeat': {
      const whole = step.step ?? wholeLength(pattern);
      return whole === null
        ? failed({ kind: 'no-repeat' })
        : madeOf(repeatPattern(pattern, whole, step.count));
    }
    case 'join': {
      const other = step.on === null ? done(step.other) : laidOn(pattern, step.other, step.on);
      return other.ok ? madeOf(joinPatterns([pattern, other.value])) : other;
    }
  }
}

/** The other pattern, moved so that its pin lies on the pattern's own. */
function laidOn(pattern: Pattern, other: Pattern, on: PinOnPin): Result<Pattern, Trouble> {
  const [to, from] = [findPin(pattern, on.own), findPin(other, on.other)];
  if (to === null) return failed({ kind: 'unknown-pin', pin: on.own });
  if (from === null) return failed({ kind: 'unknown-pin', pin: on.other });
  const [own, its] = [pattern.pins[to] as Pin, other.pins[from] as Pin];
  return done(shiftPattern(other, subtract(own, its)));
}

/** How many pins are too many is said in one way for all verbs. */
function madeOf(made: ReturnType<typeof joinPatterns>): Result<Pattern, Trouble> {
  if (made.ok) return made;
  const { trouble } = made;
  return failed(
    trouble.kind === 'too-many-pins' ? { ...trouble, count: trouble.given, limit: MOST_PINS } : trouble,
  );
}

/** From the first repeat to where the next whole pattern would begin. */
function wholeLength({ repeat }: Pattern): Point | null {
  return repeat ? scale(repeat.step, repeat.count ?? 1) : null;
}

const groundAngleOf = ({ recipe }: Pattern): number | null =>
  recipe && 'angle' in recipe && typeof recipe.angle === 'number' ? recipe.angle : null;

function middleOf(pattern: Pattern): Point {
  if (pattern.pins.length === 0) return { x: 0, y: 0 };
  const { left, right, top, bottom } = boxOfPins(pattern);
  return { x: (left + right) / 2, y: (top + bottom) / 2 };
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
