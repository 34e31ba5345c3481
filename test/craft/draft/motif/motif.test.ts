import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '#base/geometry/point.ts';
import { isInside } from '#base/geometry/polygon.ts';
import { distanceToStep } from '#base/geometry/segment.ts';
import { draft } from '#craft/draft/draft.ts';
import { groundNamed } from '#craft/draft/grounds/index.ts';
import { fitMotifs } from '#craft/draft/motif/fit.ts';
import { frameOf } from '#craft/draft/motif/frame.ts';
import { straighten } from '#craft/true/index.ts';
import { look } from '#jobs/look.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { MotifRecipe } from '#pattern/recipe/motif.ts';
import { anyMotif, ring, roundMotif } from './recipes.ts';

const about = {
  name: 'Tide pool',
  maker: 'Quayside Workshop',
  source: 'Drafted',
  permission: 'Free to copy',
};

const drafted = (recipe: MotifRecipe): Pattern => {
  const result = draft(recipe, about);
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  return result.value;
};

/** Recipes that can be met; a few shapes are too tight for any pins. */
const anyThatFits = anyMotif.filter((recipe) => draft(recipe).ok);

const fittedOf = (recipe: MotifRecipe) => {
  const frame = frameOf(recipe);
  if (!frame.ok) throw new Error(JSON.stringify(frame.trouble));
  const motifs = fitMotifs(recipe, frame.value);
  if (!motifs.ok) throw new Error(JSON.stringify(motifs.trouble));
  return { frame: frame.value, motifs: motifs.value };
};

/** The chain's own distance, worked out step by step. */
const awayFrom = (chain: readonly Point[], place: Point) =>
  chain.reduce(
    (nearest, from, k) => Math.min(nearest, distanceToStep(place, from, chain[(k + 1) % chain.length]!)),
    Infinity,
  );

const isGround = ({ id }: { id: string }) => id.startsWith('g');

describe('any motif', () => {
  it('keeps its clearance free of ground and filling, on its own side of the outline', () => {
    fc.assert(
      fc.property(anyThatFits, (recipe) => {
        const { frame, motifs } = fittedOf(recipe);
        const pattern = drafted(recipe);
        const { chain } = motifs[0]!.shape;
        for (const pin of pattern.pins) {
          const outside = isGround(pin);
          if (!outside && !pin.id.includes('.f')) continue;
          const repeat = Math.min(recipe.repeats - 1, Math.floor(pin.y / frame.step));
          const place = { x: pin.x, y: pin.y - repeat * frame.step };
          expect(awayFrom(chain, place)).toBeGreaterThan(frame.clearance - 0.001);
          expect(isInside(chain, place)).toBe(!outside);
        }
      }),
      { numRuns: 40 },
    );
  });

  it('has its outline pins at even distances along each part, and one at every corner', () => {
    fc.assert(
      fc.property(anyThatFits, (recipe) => {
        for (const { shape, parts } of fittedOf(recipe).motifs) {
          for (const [k, pins] of parts.entries()) {
            const { cubics, length } = shape.parts[k]!;
            expect(distance(pins[0]!, cubics[0]![0])).toBeLessThan(1e-9);
            const ends = [...pins, cubics.at(-1)![3]];
            const along = alongChain(shape.chain, ends);
            // Chord steps of a tenth of a millimetre fall short of the curve by far less than this.
            for (const step of along) expect(Math.abs(step / (length / pins.length) - 1)).toBeLessThan(0.01);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('is the same in all repeats, a repeat apart', () => {
    fc.assert(
      fc.property(anyThatFits, (recipe) => {
        const { pins } = drafted({ ...recipe, repeats: 2 });
        const places = new Map(pins.map((pin) => [pin.id, pin]));
        const step = recipe.length * recipe.spacing;
        for (const { id, x, y } of pins) {
          const other = places.get(id.replace(/^m1\.1\./, 'm1.2.'));
          if (other?.id === id || other === undefined) continue;
          expect(distance(other, { x, y: y + step })).toBeLessThan(0.001);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('grows with its recipe', () => {
    fc.assert(
      fc.property(anyThatFits, fc.constantFrom(1.5, 2, 7), (recipe, factor) => {
        const small = drafted(recipe).pins;
        const large = drafted(grown(recipe, factor)).pins;
        expect(large.map(({ id }) => id)).toEqual(small.map(({ id }) => id));
        for (const [k, { x, y }] of small.entries()) {
          const scaled = { x: x * factor, y: y * factor };
          expect(distance(large[k]!, scaled)).toBeLessThan(1e-5 * factor);
        }
      }),
      { numRuns: 20 },
    );
  });
});

/** Lengths along a closed chain from each of some places on it to the next. */
function alongChain(chain: readonly Point[], places: readonly Point[]): number[] {
  const reached: number[] = [];
  const total = chain.reduce((sum, from, k) => sum + distance(from, chain[(k + 1) % chain.length]!), 0);
  for (const place of places) {
    let [along, best, at] = [0, Infinity, 0];
    for (const [k, from] of chain.entries()) {
      const away = distanceToStep(place, from, chain[(k + 1) % chain.length]!);
      const here = along + distance(from, place);
      if (away < best) [best, at] = [away, here];
      along += distance(from, chain[(k + 1) % chain.length]!);
    }
    reached.push(at);
  }
  return reached.slice(1).map((at, k) => (at - reached[k]! + total) % total || total);
}

const grown = (recipe: MotifRecipe, factor: number): MotifRecipe => ({
  ...recipe,
  spacing: recipe.spacing * factor,
  width: recipe.width * factor,
  clearance: fittedOf(recipe).frame.clearance * factor,
  motifs: recipe.motifs.map((motif, k) => ({
    ...motif,
    at: { x: motif.at.x * factor, y: motif.at.y * factor },
    outline: motif.outline.map((knot) => ({ ...knot, x: knot.x * factor, y: knot.y * factor })),
    pins: fittedOf(recipe).motifs[k]!.parts.flat().length,
  })),
});

/** Few pins of a ground that leaves places empty do not say by themselves what they meant, at flat angles least. */
const hasWholeGround = ({ ground, angle }: MotifRecipe) => groundNamed(ground).plain || angle > 36;

describe('a drafted motif', () => {
  it('passes the look and is left where it is', () => {
    fc.assert(
      fc.property(anyThatFits.filter(hasWholeGround), (recipe) => {
        const pattern = drafted(recipe);
        expect(look(pattern, () => {}).findings.map(({ sentence }) => sentence)).toEqual([]);
        for (const [pin, place] of straighten(pattern.pins, {}).places.entries()) {
          expect(distance(place, pattern.pins[pin]!)).toBeLessThan(0.001);
        }
      }),
      { numRuns: 25, seed: 4, endOnFailure: true },
    );
  });

  it('is written and read as it is', () => {
    const pattern = drafted(
      roundMotif({
        motifs: [{ ...roundMotif().motifs[0]!, filling: { kind: 'ground', ground: 'honeycomb' } }],
      }),
    );
    const read = readPattern(writePattern(pattern));
    expect(read.ok && read.value.pins).toHaveLength(pattern.pins.length);
    expect(pattern.runs.filter(({ role }) => role === 'outline')).toHaveLength(1);
    expect(pattern.marks.filter(({ kind }) => kind === 'gimp')).toHaveLength(1);
    expect(pattern.areas).toMatchObject([{ stitch: 'filling', name: 'honeycomb' }]);
  });

  it('counts as Pick says: in a diamond on the lattice I = A - B/2 + 1 places lie', () => {
    // G. Pick, Sitzungsberichte des deutschen naturwissenschaftlich-medicinischen Vereines "Lotos" 19 (1899) 311.
    const half = 6;
    const spacing = 4;
    const row = spacing / 2;
    const corner = (i: number, j: number) => ({ x: i * row, y: j * row, sharp: true });
    const pattern = drafted(
      roundMotif({
        angle: 45,
        spacing,
        width: 80,
        length: 20,
        clearance: 0.76,
        motifs: [
          {
            ...roundMotif().motifs[0]!,
            at: { x: 40, y: 40 },
            outline: [corner(0, -half), corner(half, 0), corner(0, half), corner(-half, 0)],
            pins: 4 * half,
            filling: { kind: 'ground', ground: 'plain' },
          },
        ],
      }),
    );
    const within = pattern.pins.filter(({ id }) => id.includes('.f')).length;
    // In cells of the plain ground: side `half`, so A = half^2 and B = 4 half.
    expect(within).toBe(half * half - (4 * half) / 2 + 1);
  });
});

describe('a recipe that cannot be met', () => {
  const trouble = (figures: Partial<MotifRecipe>) => {
    const result = draft(roundMotif(figures));
    if (result.ok) throw new Error('it was met');
    return result.trouble;
  };
  const motif = roundMotif().motifs[0]!;

  it.each<[Partial<MotifRecipe>, string, string]>([
    [{ spacing: 0.5 }, 'spacing', 'pins-too-close'],
    [{ width: 1 }, 'width', 'does-not-fit'],
    [{ width: 20 }, 'width', 'does-not-fit'],
    [{ length: 4 }, 'length', 'does-not-fit'],
    [{ clearance: 0.2 }, 'clearance', 'pins-too-close'],
    [{ clearance: 17 }, 'clearance', 'leaves-no-ground'],
    [{ ground: 'honeycomb', repeats: 2, length: 15 }, 'length', 'repeat-does-not-divide'],
    [{ motifs: [{ ...motif, at: { x: 5, y: 28 } }] }, 'motifs.0.at.x', 'does-not-fit'],
    [{ motifs: [{ ...motif, at: { x: 30, y: 70 } }] }, 'motifs.0.at.y', 'does-not-fit'],
    [{ motifs: [{ ...motif, pins: 5 }] }, 'motifs.0.pins', 'too-few-pins'],
    [{ motifs: [{ ...motif, pins: 400 }] }, 'motifs.0.pins', 'pins-too-close'],
    [{ width: 120, motifs: [motif, { ...motif, at: { x: 40, y: 28 } }] }, 'motifs.1.at.x', 'motifs-overlap'],
  ])('%#: the figure %s', (figures, figure, why) => {
    const found = trouble(figures);
    expect(found).toMatchObject({ figure, why });
    expect(found.nearest).toBeDefined();
    // The nearest works as far as this figure goes; another one may be in the way then.
    const again = draft(changed(roundMotif(figures), figure, found.nearest!));
    expect(again.ok ? null : again.trouble.figure).not.toBe(figure);
  });

  it('names the point near which an outline crosses itself', () => {
    const eight = [
      { x: -10, y: -10 },
      { x: 10, y: 10 },
      { x: 10, y: -10 },
      { x: -10, y: 10 },
    ].map((knot) => ({ ...knot, sharp: true }));
    expect(trouble({ motifs: [{ ...motif, outline: eight }] })).toMatchObject({
      figure: expect.stringMatching(/^motifs\.0\.outline\.\d\.x$/),
      why: 'crosses-itself',
    });
  });

  it('names a point that stands on the one before it', () => {
    const outline = [...ring(10, 6), { x: -3, y: -8 }, { x: -3, y: -8 }];
    expect(trouble({ motifs: [{ ...motif, outline }] })).toMatchObject({ figure: 'motifs.0.outline.7.x' });
  });

  it('says how much clearance leaves a filling its pins', () => {
    const found = trouble({
      clearance: 11,
      motifs: [
        {
          ...motif,
          filling: { kind: 'ground', ground: 'plain' },
          outline: ring(10, 8),
          at: { x: 28, y: 30 },
        },
      ],
    });
    expect(found).toMatchObject({ figure: 'clearance', why: 'leaves-no-ground' });
    expect(found.most).toBeGreaterThan(9);
    expect(found.most).toBeLessThanOrEqual(10);
  });
});

/** The recipe with one figure changed, named by its path. */
function changed(recipe: MotifRecipe, path: string, value: number): MotifRecipe {
  const copy = structuredClone(recipe) as unknown as Record<string, unknown>;
  const keys = path.split('.');
  let at = copy;
  for (const key of keys.slice(0, -1)) at = at[key] as Record<string, unknown>;
  at[keys.at(-1)!] = value;
  return copy as unknown as MotifRecipe;
}
