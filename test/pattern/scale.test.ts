import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { applyAffine } from '#base/geometry/affine.ts';
import { draft } from '#craft/draft/draft.ts';
import { anchorPoint, anchorsOf } from '#pattern/anchors.ts';
import { pinsById } from '#pattern/pins.ts';
import { millimetres } from '#pattern/recipe/figures.ts';
import { recipeSchema } from '#pattern/recipe/recipe.ts';
import { scalePattern } from '#pattern/scale.ts';
import { arbitraryPattern } from '../support/arbitrary-pattern.ts';

const factors = fc.double({ min: 0.1, max: 10, noNaN: true });

describe('a scaled pattern', () => {
  test('has every place that many times as far from its origin', () => {
    fc.assert(
      fc.property(arbitraryPattern({ fine: true }), factors, (pattern, factor) => {
        const scaled = scalePattern(pattern, factor);
        const [before, after] = [pinsById(pattern), pinsById(scaled)];
        scaled.pins.forEach((pin, k) => {
          expect(pin.x).toBeCloseTo(pattern.pins[k]!.x * factor, 6);
          expect(pin.y).toBeCloseTo(pattern.pins[k]!.y * factor, 6);
        });
        scaled.marks.forEach((mark, k) => {
          anchorsOf(mark).forEach((anchor, at) => {
            const from = anchorPoint(before, anchorsOf(pattern.marks[k]!)[at]!);
            const to = anchorPoint(after, anchor);
            expect(to.x).toBeCloseTo(from.x * factor, 6);
            expect(to.y).toBeCloseTo(from.y * factor, 6);
          });
        });
        expect(scaled.repeat?.step.x).toBe(pattern.repeat && pattern.repeat.step.x * factor);
        expect(scaled.sizes.footsideSpacing).toBe(
          pattern.sizes.footsideSpacing && pattern.sizes.footsideSpacing * factor,
        );
      }),
    );
  });

  test('keeps ids, order, stitches and words, and the diameters of pins and holes', () => {
    fc.assert(
      fc.property(arbitraryPattern(), factors, (pattern, factor) => {
        const scaled = scalePattern(pattern, factor);
        expect(scaled.runs).toEqual(pattern.runs);
        expect(scaled.about).toEqual(pattern.about);
        expect(scaled.pins.map(({ id, diameter }) => [id, diameter])).toEqual(
          pattern.pins.map(({ id, diameter }) => [id, diameter]),
        );
        const { footsideSpacing: _, ...hand } = scaled.sizes;
        const { footsideSpacing: __, ...own } = pattern.sizes;
        expect(hand).toEqual(own);
        const grown = scalePattern(pattern, factor, { thickness: true });
        expect(grown.sizes.hole).toBe(pattern.sizes.hole && pattern.sizes.hole * factor);
      }),
    );
  });

  test('has its paper under the same pins: what a dot of the picture showed, it still shows', () => {
    fc.assert(
      fc.property(arbitraryPattern(), factors, (pattern, factor) => {
        const { paper } = pattern;
        const scaled = scalePattern(pattern, factor);
        expect(scaled.paper === undefined).toBe(paper === undefined);
        if (!paper) return;
        const corner = { x: paper.width, y: paper.height };
        const [before, after] = [
          applyAffine(paper.toPattern, corner),
          applyAffine(scaled.paper!.toPattern, corner),
        ];
        expect(after.x).toBeCloseTo(before.x * factor, 6);
        expect(after.y).toBeCloseTo(before.y * factor, 6);
        for (const [pin, { x }] of Object.entries(paper.stood ?? {}))
          expect(scaled.paper!.stood![pin]!.x).toBeCloseTo(x * factor, 6);
      }),
    );
  });

  test('halves the dots an inch where it is twice as large', () => {
    const pattern = fc.sample(arbitraryPattern(), { numRuns: 1, seed: 1 })[0]!;
    expect(scalePattern({ ...pattern, scale: { from: 'file', dpi: 300 } }, 2).scale).toEqual({
      from: 'file',
      dpi: 150,
    });
    expect(scalePattern({ ...pattern, scale: { from: 'span', dpi: 300, length: 100 } }, 2).scale).toEqual({
      from: 'span',
      dpi: 150,
      length: 200,
    });
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('by %d is a mistake of our own', (factor) => {
    const pattern = fc.sample(arbitraryPattern(), { numRuns: 1, seed: 1 })[0]!;
    expect(() => scalePattern(pattern, factor)).toThrow(RangeError);
  });
});

describe('a drafted pattern', () => {
  const recipe = recipeSchema.parse({
    kind: 'strip',
    spacing: 4,
    angle: 52,
    repeats: 3,
    length: 6,
    width: 8,
  });
  const drafted = draft(recipe, { name: 'Strip' });
  if (!drafted.ok) throw new Error(drafted.trouble.kind);

  test('scaled is what its scaled recipe drafts', () => {
    const scaled = scalePattern(drafted.value, 1.25);
    const anew = draft(scaled.recipe!, { name: 'Strip' });
    if (!anew.ok) throw new Error(anew.trouble.kind);
    expect(scaled.pins).toHaveLength(anew.value.pins.length);
    scaled.pins.forEach(({ id, x, y }, k) => {
      expect(id).toBe(anew.value.pins[k]!.id);
      expect(x).toBeCloseTo(anew.value.pins[k]!.x, 9);
      expect(y).toBeCloseTo(anew.value.pins[k]!.y, 9);
    });
    expect(scaled.repeat).toEqual(anew.value.repeat);
  });

  test('drops a recipe that cannot be drafted so small', () => {
    expect(scalePattern(drafted.value, 0.02).recipe).toBeUndefined();
  });
});

/** Figures that are numbers and no whole counts: the way to each, and whether it is a length. */
function figures(schema: z.core.$ZodType, path: string): { path: string; length: boolean }[] {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'number':
      return (schema as z.ZodNumber).isInt ? [] : [{ path, length: millimetres.get(schema) !== undefined }];
    case 'object':
      return Object.entries(def.shape).flatMap(([key, part]) => figures(part, `${path}.${key}`));
    case 'array':
      return figures(def.element, `${path}[]`);
    case 'tuple':
      return def.items.flatMap((part, k) => figures(part, `${path}[${k}]`));
    case 'union':
      return def.options.flatMap((part) => figures(part, path));
    case 'optional':
    case 'default':
    case 'prefault':
    case 'nullable':
    case 'readonly':
      return figures(def.innerType, path);
    default:
      return [];
  }
}

test('every figure of a recipe that is not a length says by its name that it is none', () => {
  const others = figures(recipeSchema, '').filter(({ length }) => !length);
  expect(
    others
      .map(({ path }) => path)
      .filter((path) => !/(angle|arc|turn|share|ratio|tolerance)s?(\[\])?$/i.test(path)),
  ).toEqual([]);
});
