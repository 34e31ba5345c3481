import fc from 'fast-check';
import { distance, type Point } from '#base/geometry/point.ts';
import { draft } from '#craft/draft/draft.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { type TapeRecipe, tapeRecipe } from '#pattern/recipe/tape.ts';

/** A recipe with everything that is not said filled in. */
export const tapes = (...list: readonly object[]): TapeRecipe =>
  tapeRecipe.parse({ kind: 'tape', tapes: list });

export const about = { maker: 'Quayside Workshop', source: 'Drafted for a test', permission: 'Free to copy' };

export function drafted(recipe: TapeRecipe): Pattern {
  const result = draft(recipe, about);
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  return result.value;
}

const size = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((v) => Math.round(100 * v) / 100);

/** Waves, hooks and rings whose bends leave room for the tape, some turned and some large. */
export const anyTape: fc.Arbitrary<TapeRecipe> = fc
  .record({
    spacing: size(1.2, 4),
    share: size(1.6, 4),
    turn: size(0, 6.28),
    closed: fc.boolean(),
    lobes: fc.integer({ min: 2, max: 5 }),
    wobble: fc.array(size(-1, 1), { minLength: 5, maxLength: 7 }),
    workers: fc.boolean(),
    start: fc.constantFrom('square' as const, 'pointed' as const),
    finish: fc.constantFrom('square' as const, 'pointed' as const),
  })
  .map(({ spacing, share, turn, closed, lobes, wobble, ...rest }) => {
    const width = Math.round(100 * share * spacing) / 100;
    const through = closed ? ring(lobes, wobble, width) : wave(wobble, width);
    return tapes({
      course: { through: through.map((p) => turned(p, turn)) },
      closed,
      width,
      spacing,
      ...rest,
    });
  });

const turned = ({ x, y }: Point, by: number): Point => ({
  x: x * Math.cos(by) - y * Math.sin(by),
  y: x * Math.sin(by) + y * Math.cos(by),
});

/** Points so far apart, and swinging so little, that no bend comes near the tape's own width. */
const wave = (wobble: readonly number[], width: number): Point[] =>
  wobble.map((swing, k) => ({ x: 6 * width * k, y: 3 * width * swing }));

function ring(lobes: number, wobble: readonly number[], width: number): Point[] {
  const radius = 2.4 * width * lobes;
  return Array.from({ length: 8 * lobes }, (_, k) => {
    const angle = (2 * Math.PI * k) / (8 * lobes);
    const own = radius + 1.2 * width * Math.abs(wobble[0]!) * Math.cos(lobes * angle);
    return { x: own * Math.cos(angle), y: own * Math.sin(angle) };
  });
}

/** Distances between neighbouring pins of a run, in straight lines. */
export function stepsOf(pattern: Pattern, run: string): number[] {
  const place = new Map(pattern.pins.map((pin) => [pin.id, pin]));
  const { pins, closed } = pattern.runs.find(({ id }) => id === run)!;
  const order = pins.map((id) => place.get(id)!);
  const onward = closed ? [...order, order[0]!] : order;
  return onward.slice(1).map((pin, k) => distance(onward[k]!, pin));
}
