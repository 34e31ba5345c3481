import { between, type Point } from '#base/geometry/point.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import type { Again, Tape, TapeCourse, TapeRecipe } from '#pattern/recipe/tape.ts';
import { centreLines } from '../tape/centre-line.ts';
import { type Guide, type GuideSpot, onLine, rounded, STEPS, straightLine } from './guide.ts';

type Through = Extract<TapeCourse, { through: unknown }>;
type Drawn = Extract<TapeCourse, { curves: unknown }>;

/** The middle line of a tape, as it is drawn the first time. */
export function tapeGuide(recipe: TapeRecipe, at: number): Guide {
  const tape = recipe.tapes[at]!;
  const put = (course: TapeCourse): Recipe => ({
    ...recipe,
    tapes: recipe.tapes.with(at, { ...tape, course }),
  });
  const { course } = tape;
  const of = { path: `tapes.${at}`, line: lineOf(tape, at, recipe.again), setSharp: null };
  return 'through' in course
    ? { ...of, ...guideThrough(course, fewest(tape, recipe.again), put) }
    : { ...of, ...guideDrawn(course, put) };
}

type Edits = Pick<Guide, 'points' | 'move' | 'add' | 'remove'>;

function guideThrough({ through }: Through, least: number, put: (course: TapeCourse) => Recipe): Edits {
  return {
    points: through.map(onLine),
    move: (at, place) => put({ through: through.with(at, rounded(place)) }),
    add: (spot) => put({ through: through.toSpliced(spot.after + 1, 0, rounded(spot)) }),
    remove: (at) => (through.length > least ? put({ through: through.toSpliced(at, 1) }) : null),
  };
}

/** Points in the order of the line: an end, the two that shape the curve, the next end, and so on. */
function guideDrawn({ from, curves }: Drawn, put: (course: TapeCourse) => Recipe): Edits {
  const all = [from, ...curves.flatMap(({ first, second, to }) => [first, second, to])];
  const course = (points: readonly Point[]): Drawn => ({
    from: points[0]!,
    curves: curves.map((_, k) => ({
      first: points[3 * k + 1]!,
      second: points[3 * k + 2]!,
      to: points[3 * k + 3]!,
    })),
  });
  return {
    points: all.map((point, k) => ({ ...point, isOn: k % 3 === 0, isSharp: false })),
    move: (at, place) => put(course(all.with(at, rounded(place)))),
    add: ({ after, share }) => {
      const k = Math.floor(after / 3);
      const [a, b, c, d] = all.slice(3 * k, 3 * k + 4) as [Point, Point, Point, Point];
      const [ab, bc, cd] = [between(a, b, share), between(b, c, share), between(c, d, share)];
      const [abc, bcd] = [between(ab, bc, share), between(bc, cd, share)];
      const halves = [
        { first: rounded(ab), second: rounded(abc), to: rounded(between(abc, bcd, share)) },
        { first: rounded(bcd), second: rounded(cd), to: d },
      ];
      return put({ from, curves: curves.toSpliced(k, 1, ...halves) });
    },
    remove(at) {
      if (at % 3 !== 0 || curves.length < 2) return null;
      const k = at / 3;
      if (k === 0) return put({ from: curves[0]!.to, curves: curves.slice(1) });
      if (k === curves.length) return put({ from, curves: curves.slice(0, -1) });
      const [before, behind] = [curves[k - 1]!, curves[k]!];
      const one = { first: before.first, second: behind.second, to: behind.to };
      return put({ from, curves: curves.toSpliced(k - 1, 2, one) });
    },
  };
}

/** The line of the first time; straight from point to point where it cannot be drawn. */
function lineOf(tape: Tape, at: number, again: Again | undefined): GuideSpot[] {
  const lines = centreLines(tape, at, again);
  const { course } = tape;
  const isDrawn = 'curves' in course;
  if (!lines.ok) return isDrawn ? [] : straightLine(course.through);
  const { curve } = lines.value[0]!;
  const ends = tape.closed || goesOn(tape, again) ? 0 : 1;
  const spans = isDrawn ? course.curves.length : course.through.length - ends;
  return Array.from({ length: spans * STEPS + 1 }, (_, step) => {
    const span = Math.min(Math.floor(step / STEPS), spans - 1);
    const { x, y } = curve.motionAt(step / STEPS).place;
    return { x, y, after: isDrawn ? 3 * span : span, share: step / STEPS - span };
  });
}

/** Whether the line goes on from one time to the next; else it is copied whole. */
const goesOn = ({ closed }: Tape, again: Again | undefined): boolean =>
  again !== undefined && (again.kind === 'turn') === closed;

const fewest = (tape: Tape, again: Again | undefined): number =>
  goesOn(tape, again) ? 1 : tape.closed ? 3 : 2;
