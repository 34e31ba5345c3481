import { describe, expect, it } from 'vitest';
import { draft } from '#craft/draft/draft.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import { about, base, drafted, troubleOf } from './recipes.ts';

const fans = (pins: number): StripRecipe => ({
  ...base,
  length: 6,
  headside: { kind: 'fans', pins, stitch: 'cloth' },
});

describe('a figure that cannot be met is named with its limits, and the nearest works', () => {
  const diamond = { shape: 'diamond', row: 4, stitch: 'cloth' } as const;
  const cases: readonly (readonly [string, StripRecipe, (nearest: number) => StripRecipe])[] = [
    ['headside.pins', fans(60), fans],
    ['headside.pins', fans(3), fans],
    ['width', { ...fans(9), width: 7 }, (width) => ({ ...fans(9), width })],
    ['width', { ...base, width: 1 }, (width) => ({ ...base, width })],
    ['spacing', { ...base, spacing: 0.4 }, (spacing) => ({ ...base, spacing })],
    [
      'repeats',
      { ...base, width: 400, length: 50, repeats: 9000 },
      (repeats) => ({ ...base, width: 400, length: 50, repeats: Math.min(repeats, 2) }),
    ],
    ['length', { ...base, ground: 'four-pin' }, (length) => ({ ...base, ground: 'four-pin', length })],
    [
      'headside.perRepeat',
      { ...base, length: 6, headside: { kind: 'points', perRepeat: 4 } },
      (perRepeat) => ({ ...base, length: 6, headside: { kind: 'points', perRepeat } }),
    ],
    [
      'headside.depth',
      { ...base, headside: { kind: 'points', depth: 9 } },
      (depth) => ({ ...base, headside: { kind: 'points', depth } }),
    ],
    [
      'areas.0.column',
      { ...base, areas: [{ ...diamond, column: 2, size: 2 }] },
      (column) => ({ ...base, areas: [{ ...diamond, column, size: 2 }] }),
    ],
    [
      'areas.0.row',
      { ...base, areas: [{ ...diamond, column: 3, size: 2 }] },
      (row) => ({ ...base, areas: [{ ...diamond, column: 3, row, size: 2 }] }),
    ],
    [
      'areas.0.size',
      { ...base, areas: [{ ...diamond, column: 4, size: 20 }] },
      (size) => ({ ...base, areas: [{ ...diamond, column: 4, row: 4 + (size % 2), size }] }),
    ],
    [
      'areas.1.row',
      {
        ...base,
        length: 6,
        areas: [
          { ...diamond, column: 4, size: 2 },
          { ...diamond, column: 4, row: 6, size: 2 },
        ],
      },
      (row) => ({
        ...base,
        length: 6,
        areas: [
          { ...diamond, column: 4, size: 2 },
          { ...diamond, column: 4, row, size: 2 },
        ],
      }),
    ],
  ];

  it.each(cases)('%s', (figure, recipe, mended) => {
    const trouble = troubleOf(recipe);
    expect(trouble.figure).toBe(figure);
    expect(trouble.nearest).toBeDefined();
    expect(draft(mended(trouble.nearest!), about).ok).toBe(true);
  });

  it('as many pins as it says a fan takes are taken, and one more is not', () => {
    const { most } = troubleOf(fans(100));
    expect(drafted(fans(most!)).pins.length).toBeGreaterThan(0);
    expect(troubleOf(fans(most! + 1)).most).toBe(most);
  });
});
