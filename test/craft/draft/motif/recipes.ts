import fc from 'fast-check';
import { groundName } from '#pattern/recipe/ground.ts';
import { type MotifRecipe, motifRecipe } from '#pattern/recipe/motif.ts';

/** A round motif in the middle of a plain strip. */
export const roundMotif = (figures: Partial<MotifRecipe> = {}): MotifRecipe =>
  motifRecipe.parse({
    kind: 'motif',
    spacing: 4,
    angle: 52,
    width: 60,
    length: 14,
    motifs: [{ at: { x: 30, y: 28 }, outline: ring(12, 8) }],
    ...figures,
  });

export const ring = (radius: number, knots: number) =>
  Array.from({ length: knots }, (_, k) => ({
    x: radius * Math.cos((2 * Math.PI * k) / knots),
    y: radius * Math.sin((2 * Math.PI * k) / knots),
  }));

const fraction = fc.double({ min: 0, max: 1, noNaN: true });

/** Recipes of one motif of any shape and size, at any angle and spacing, in any ground. */
export const anyMotif: fc.Arbitrary<MotifRecipe> = fc
  .record({
    spacing: fraction.map((t) => 1.4 + 9 * t),
    angle: fraction.map((t) => 30 + 45 * t),
    radius: fraction.map((t) => 2 + 5 * t),
    knots: fc.array(fc.tuple(fraction, fraction), { minLength: 5, maxLength: 10 }),
    turn: fc.integer({ min: -180, max: 180 }),
    ground: fc.oneof(fc.constant('plain' as const), fc.constantFrom(...groundName.options)),
    filling: fc.option(
      fc.oneof(
        fc.constantFrom(...groundName.options).map((ground) => ({ kind: 'ground' as const, ground })),
        fc.constant({ kind: 'stitch' as const, stitch: 'cloth' as const }),
      ),
      { nil: undefined },
    ),
    footside: fc.constantFrom('none' as const, 'left' as const, 'both' as const),
    repeats: fc.constantFrom(1, 1, 2, 3),
    gimp: fc.boolean(),
  })
  .map(({ spacing, angle, radius, knots, turn, ground, filling, footside, repeats, gimp }) => {
    const size = radius * spacing;
    const outline = knots.map(([near, sharp], k) => {
      const at = (2 * Math.PI * k) / knots.length;
      const away = size * (0.65 + 0.35 * near);
      return { x: away * Math.cos(at), y: away * Math.sin(at), ...(sharp < 0.2 && { sharp: true }) };
    });
    const width = 2 * size + 6 * spacing;
    // Cells of every ground fit in six spacings.
    const length = 6 * Math.ceil((2 * radius + 3) / 6);
    const at = { x: width / 2, y: (length * spacing) / 2 };
    return motifRecipe.parse({
      kind: 'motif',
      spacing,
      angle,
      ground,
      width,
      length,
      repeats,
      footside,
      motifs: [{ at, turn, outline, gimp, ...(filling && { filling }) }],
    });
  });
