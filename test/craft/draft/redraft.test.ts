import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { draft } from '#craft/draft/draft.ts';
import { library } from '#craft/draft/library/index.ts';
import { type Drafted, redraft } from '#craft/draft/redraft.ts';
import { applyChange } from '#pattern/change/change.ts';
import { removePins } from '#pattern/change/remove-pins.ts';
import { findBrokenReference } from '#pattern/file/references.ts';
import { roundPattern } from '#pattern/file/round.ts';
import type { Mark, Pattern } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';
import type { Recipe } from '#pattern/recipe/recipe.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import { deepFreeze } from '../../support/change-laws.ts';

const strip: StripRecipe = {
  kind: 'strip',
  spacing: 5,
  angle: 52,
  repeats: 2,
  length: 3,
  width: 6,
  ground: 'plain',
};
const drafted = (recipe: Recipe): Drafted => {
  const result = draft(recipe, { maker: 'Example maker' });
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  return deepFreeze({ ...result.value, recipe });
};
const redrafted = (pattern: Pattern, recipe: Recipe) => {
  const result = redraft(deepFreeze({ ...pattern, recipe: pattern.recipe! }), recipe);
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  expect(findBrokenReference(result.value.pattern)).toBeNull();
  return result.value;
};
const moved = (pattern: Pattern, id: string, x: number, y: number): Pattern => ({
  ...pattern,
  pins: pattern.pins.map((pin) => (pin.id === id ? { ...pin, x: pin.x + x, y: pin.y + y } : pin)),
});
const placed = (pattern: Pattern, id: string) => pinsById(pattern).get(id);

describe('drafted anew from the same recipe, a pattern is as it was', () => {
  test.each(library)('$name', ({ recipe }) => {
    const pattern = roundPattern(drafted(recipe));
    expect(redrafted(pattern, recipe)).toEqual({ pattern, kept: 0, lost: [] });
  });

  test('whatever a hand did to it (seed 7)', () => {
    const pattern = drafted(strip);
    fc.assert(
      fc.property(fc.array(arbitraryEdit(pattern), { maxLength: 6 }), (edits) => {
        const edited = roundPattern(edits.reduce((so, edit) => edit(so), pattern as Pattern));
        expect(redrafted(edited, strip)).toMatchObject({ pattern: edited, lost: [] });
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});

describe('drafted anew from other figures', () => {
  const finer: StripRecipe = { ...strip, spacing: 4, repeats: 3 };
  const narrower: StripRecipe = { ...strip, width: 4 };
  const pattern = drafted(strip);

  test('without an edit it is the new draft', () => {
    expect(redrafted(pattern, finer)).toEqual({
      pattern: roundPattern(drafted(finer)),
      kept: 0,
      lost: [],
    });
  });

  test('a pin that was moved keeps its offset from its place', () => {
    const { pattern: anew, kept, lost } = redrafted(moved(pattern, 'g3.3', 0.4, -0.3), finer);
    const want = placed(drafted(finer), 'g3.3')!;
    expect(placed(anew, 'g3.3')!.x).toBeCloseTo(want.x + 0.4, 2);
    expect(placed(anew, 'g3.3')!.y).toBeCloseTo(want.y - 0.3, 2);
    expect([kept, lost]).toEqual([1, []]);
  });

  test('a pin that was taken out stays out, and the footside stays closed up', () => {
    const less = applyChange(pattern, removePins(pattern, ['f4', 'g3.3']));
    const { pattern: anew, kept, lost } = redrafted(less, finer);
    const want = roundPattern(applyChange(drafted(finer), removePins(drafted(finer), ['f4', 'g3.3'])));
    expect(anew).toEqual({ ...want, recipe: finer });
    expect([kept, lost]).toEqual([2, []]);
  });

  test('a pin that was put in stays beside its neighbour, and in the run it was put in', () => {
    const near = placed(pattern, 'f4')!;
    const more: Pattern = {
      ...pattern,
      pins: [...pattern.pins, { id: 'mine', x: near.x - 1, y: near.y + 1 }],
      runs: pattern.runs.map((run) =>
        run.id === 'footside'
          ? { ...run, pins: run.pins.flatMap((id) => (id === 'f4' ? [id, 'mine'] : [id])) }
          : run,
      ),
    };
    const { pattern: anew, lost } = redrafted(more, finer);
    const beside = placed(drafted(finer), 'f4')!;
    expect(placed(anew, 'mine')).toMatchObject({ x: beside.x - 1, y: beside.y + 1 });
    const foot = anew.runs.find(({ id }) => id === 'footside')!.pins;
    expect(foot[foot.indexOf('f4') + 1]).toBe('mine');
    expect(foot).toHaveLength(drafted(finer).runs.find(({ id }) => id === 'footside')!.pins.length + 1);
    expect(lost).toEqual([]);
  });

  test('an edit whose pin is gone is told, not dropped in silence', () => {
    const mark: Mark = { id: 'note', kind: 'text', at: { pin: 'g5.5' }, text: 'turn here', height: 3 };
    const edited = {
      ...moved(pattern, 'g5.3', 0.2, 0),
      marks: [...pattern.marks, mark],
    };
    const { pattern: anew, lost } = redrafted(edited, narrower);
    expect(lost).toEqual([
      { list: 'pins', id: 'g5.3', edit: 'changed', gone: [] },
      { list: 'marks', id: 'note', edit: 'added', gone: ['g5.5'] },
    ]);
    expect(anew).toEqual(roundPattern(drafted(narrower)));
  });

  test('a working line, an area and what the pattern says of itself are kept', () => {
    const edited: Pattern = {
      ...pattern,
      about: { ...pattern.about, notes: 'Worked twice.' },
      sizes: { ...pattern.sizes, pin: 0.55 },
      areas: [
        ...pattern.areas,
        { id: 'mine', outline: [{ pin: 'g1.1' }, { pin: 'g3.1' }, { x: 9, y: 9 }], stitch: 'cloth' },
      ],
    };
    const { pattern: anew, kept } = redrafted(edited, finer);
    expect(anew.about).toEqual(edited.about);
    expect(anew.sizes).toEqual({ ...drafted(finer).sizes, pin: 0.55 });
    expect(anew.areas.at(-1)).toMatchObject({ id: 'mine', stitch: 'cloth' });
    expect(anew.recipe).toEqual(finer);
    expect(kept).toBe(1);
  });

  test('nothing is dropped in silence, whatever was done and whichever figure changes (seed 11)', () => {
    fc.assert(
      fc.property(
        fc.array(arbitraryEdit(pattern), { maxLength: 6 }),
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 1, max: 3 }),
        fc.constantFrom(2, 4, 6, 8),
        (edits, spacing, repeats, width) => {
          const recipe: StripRecipe = { ...strip, spacing, repeats, width };
          const edited = roundPattern(edits.reduce((so, edit) => edit(so), pattern as Pattern));
          const { pattern: anew, lost } = redrafted(edited, recipe);
          const told = new Set(lost.map(({ list, id }) => `${list} ${id}`));
          const [old, fresh] = [roundPattern(pattern), roundPattern(drafted(recipe))];
          for (const list of ['pins', 'marks', 'areas'] as const) {
            const at = (from: Pattern) => new Map(from[list].map((record) => [record.id, record]));
            const [was, is, becomes, now] = [at(old), at(edited), at(fresh), at(anew)];
            // What the hand put in is there, or told.
            for (const id of is.keys())
              if (!was.has(id)) expect(now.has(id) || told.has(`${list} ${id}`)).toBe(true);
            // What it took out stays out; all else that is drafted stands.
            for (const id of becomes.keys())
              expect([id, now.has(id)]).toEqual([id, is.has(id) || !was.has(id)]);
          }
          for (const pin of edited.pins) {
            const [was, will, now] = [placed(old, pin.id), placed(fresh, pin.id), placed(anew, pin.id)];
            if (!was || (was.x === pin.x && was.y === pin.y)) continue;
            if (!will || !now) expect(told).toContain(`pins ${pin.id}`);
            else
              expect(Math.hypot(now.x - will.x - pin.x + was.x, now.y - will.y - pin.y + was.y)).toBeLessThan(
                0.002,
              );
          }
        },
      ),
      { seed: 11, numRuns: 300 },
    );
  });
});

/** What a hand could do: move, take out or put in a pin, write on a pin, take a mark out, turn the order round. */
function arbitraryEdit({ pins }: Pattern): fc.Arbitrary<(pattern: Pattern) => Pattern> {
  const id = fc.constantFrom(...pins.map((pin) => pin.id));
  const way = fc.integer({ min: -900, max: 900 }).map((value) => value / 1000);
  const name = fc.integer({ min: 1, max: 99 }).map((number) => `by-hand-${number}`);
  const has = (pattern: Pattern, one: string) => pattern.pins.some((pin) => pin.id === one);
  return fc.oneof(
    fc.tuple(id, way, way).map(
      ([one, x, y]) =>
        (pattern: Pattern) =>
          moved(pattern, one, x, y),
    ),
    id.map(
      (one) => (pattern: Pattern) =>
        has(pattern, one) ? applyChange(pattern, removePins(pattern, [one])) : pattern,
    ),
    fc.tuple(name, id, way, way, fc.nat(20)).map(([own, one, x, y, at]) => (pattern: Pattern) => {
      const pin = placed(pattern, one);
      if (!pin || has(pattern, own)) return pattern;
      const put = { id: own, x: pin.x + x, y: pin.y + y };
      return { ...pattern, pins: pattern.pins.toSpliced(at, 0, put) };
    }),
    fc.tuple(name, id).map(([own, one]) => (pattern: Pattern) => {
      if (!has(pattern, one) || pattern.marks.some((mark) => mark.id === own)) return pattern;
      const mark: Mark = { id: own, kind: 'number', at: { pin: one }, value: 3 };
      return { ...pattern, marks: [...pattern.marks, mark] };
    }),
    fc.nat(30).map((at) => (pattern: Pattern) => ({ ...pattern, marks: pattern.marks.toSpliced(at, 1) })),
    fc.constant((pattern: Pattern) => ({ ...pattern, pins: pattern.pins.toReversed() })),
  );
}
