import { describe, expect, it } from 'vitest';
import { applyAffine, compose, rotation, translation } from '#base/geometry/affine.ts';
import { lookOver } from '#craft/look/look-over.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { edging, fine, type KnownPattern, place, round, tape } from '../../support/patterns/index.ts';
import { inspection } from './inspections.ts';

/** Fine work has fine pins; in a coarser hole a few pins of these patterns would indeed stand too near. */
const good: readonly (readonly [string, KnownPattern, Pattern['sizes']])[] = [
  ['an edging', edging(), {}],
  ['a long edging with a steep ground', edging({ angle: 58, repeats: 6, spacing: 2.6 }), {}],
  ['a fine piece', fine(), { hole: 0.3 }],
  ['another fine piece', fine({ seed: 4, repeats: 3 }), { hole: 0.3 }],
  ['a round mat', round(), {}],
  ['a tape', tape(), {}],
];

const about = { maker: 'an invented maker', permission: 'for tests' };

/** Without the sheet, since these patterns lie round their own origin. */
const look = (known: KnownPattern, parts: Partial<Pattern>) => {
  const { pattern, ...rest } = inspection({ ...known.pattern, about, ...parts });
  const { sheet: _, ...unframed } = pattern;
  return lookOver({ ...rest, pattern: unframed });
};

describe.each(good)('%s that is exact', (_, known, sizes) => {
  it('has no findings', () => {
    expect(look(known, { sizes })).toEqual([]);
  });

  it('has none when it is laid at another angle, and is known to the file', () => {
    const turned = place(known, compose(translation(20, 30), rotation(0.7)));
    const step = known.pattern.repeat && applyAffine(rotation(0.7), known.pattern.repeat.step);
    const repeat = step && { ...known.pattern.repeat, step };
    expect(look({ ...turned, pattern: { ...turned.pattern, ...(repeat && { repeat }) } }, { sizes })).toEqual(
      [],
    );
  });

  it('has only the note that nobody is named, where nobody is', () => {
    const rules = look(known, { sizes, about: {} }).map((finding) => finding.rule);
    expect(rules).toEqual(['no-provenance', 'no-provenance']);
  });
});
