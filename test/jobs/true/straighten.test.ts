import { describe, expect, test } from 'vitest';
import { applyAffine, invert, rotation, scaling } from '#base/geometry/affine.ts';
import { distance } from '#base/geometry/point.ts';
import { silent } from '#base/progress.ts';
import { normal, seededRandom } from '#base/random.ts';
import { usualChoice } from '#jobs/true/choice.ts';
import type { KnownWords } from '#jobs/true/known.ts';
import { straightenPattern } from '#jobs/true/straighten.ts';
import { readPattern } from '#pattern/file/read.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { patternFromPins } from '#pattern/pins.ts';

/** A ground of 8 by 16 at 45 degrees, its pins off by `jitter`; one pin in the middle lacks. */
function ground(jitter: number): Pattern {
  const random = seededRandom(7);
  const points = Array.from({ length: 128 }, (_, i) => ({
    x: 30 + 4 * (i % 8) + 2 * (Math.floor(i / 8) % 2) + jitter * normal(random),
    y: 30 + 2 * Math.floor(i / 8) + jitter * normal(random),
  }));
  const gap = 60;
  const pattern = patternFromPins(points.filter((_, i) => i !== gap));
  return {
    ...pattern,
    marks: [
      { id: 'm1', kind: 'line', from: { pin: 'p1' }, to: { pin: 'p2' } },
      { id: 'm2', kind: 'text', at: { x: 10, y: 10 }, text: 'footside', height: 3 },
    ],
    sheet: { width: 100, height: 100 },
    paper: {
      entry: 'paper.jpg',
      sha256: '0'.repeat(64),
      width: 1000,
      height: 1000,
      toPattern: scaling(0.1),
    },
  };
}

function trued(pattern: Pattern, known: KnownWords = {}, choice = usualChoice) {
  const result = straightenPattern(pattern, known, choice, silent);
  if (!result.ok) throw new Error(JSON.stringify(result.trouble));
  // Whatever comes out must be a pattern that can be saved and opened again.
  expect(readPattern(writePattern(result.value.pattern)).ok).toBe(true);
  return result.value;
}

describe('straightenPattern', () => {
  const pattern = ground(0.08);

  test('marks keep to their pins, and what is drawn elsewhere stays', () => {
    const { pattern: after } = trued(pattern);
    expect(after.marks).toEqual(pattern.marks);
    expect(after.pins.map(({ id }) => id)).toEqual(pattern.pins.map(({ id }) => id));
  });

  test('where a moved pin stood on the paper is remembered, through a second straightening too', () => {
    const once = trued(pattern).pattern;
    pattern.pins.forEach((pin, index) => {
      const stood = once.paper?.stood?.[pin.id] ?? once.pins[index]!;
      expect(distance(stood, pin)).toBe(0);
    });
    const twice = trued(once).pattern;
    pattern.pins.forEach((pin, index) => {
      expect(distance(twice.paper?.stood?.[pin.id] ?? twice.pins[index]!, pin)).toBe(0);
    });
  });

  test('the pattern that went in is not touched', () => {
    const before = JSON.stringify(pattern);
    trued(pattern, {}, { ...usualChoice, addMissing: true, dropStray: true });
    expect(JSON.stringify(pattern)).toBe(before);
  });

  test('a missing pin that is taken gets an id of its own and has never stood on the paper', () => {
    const { pattern: after, result } = trued(pattern, {}, { ...usualChoice, addMissing: true });
    expect(result.missing).toHaveLength(1);
    const added = after.pins.filter(({ id }) => !pattern.pins.some((pin) => pin.id === id));
    expect(added).toHaveLength(1);
    expect(after.paper?.stood?.[added[0]!.id]).toBeUndefined();
    expect(distance(added[0]!, result.missing[0]!)).toBeLessThan(0.001);
  });

  test('leaving every part leaves every pin, to the last bit', () => {
    const { proposal } = trued(pattern);
    const leave = proposal.structures.map(({ id }) => id);
    expect(trued(pattern, {}, { ...usualChoice, leave }).pattern.pins).toEqual(pattern.pins);
  });

  test('a true angle undoes what a copier stretched, and everything on the sheet follows', () => {
    const map = scaling(1.02, 0.99);
    const exact = ground(0);
    const copied: Pattern = {
      ...exact,
      pins: exact.pins.map((pin) => ({ ...pin, ...applyAffine(map, pin) })),
    };
    const { pattern: after } = trued(copied, { angle: 45 });
    const step = (from: number, to: number) => {
      const [a, b] = [after.pins[from]!, after.pins[to]!];
      return Math.atan2(Math.abs(b.y - a.y), Math.abs(b.x - a.x));
    };
    // From the first pin of a row to the first of the next but shifted one, down the diagonal.
    expect((step(0, 8) * 180) / Math.PI).toBeCloseTo(45, 3);
    const text = after.marks[1] as Extract<Pattern['marks'][number], { kind: 'text' }>;
    expect(text.at).not.toEqual({ x: 10, y: 10 });
  });

  test('a known distance brings a pattern in pixels into millimetres, with its paper', () => {
    const turned = ground(0);
    const inPixels: Pattern = {
      ...turned,
      unit: 'px',
      pins: turned.pins.map((pin) => ({ ...pin, x: pin.x * 10, y: pin.y * 10 })),
      marks: [],
      sheet: { width: 1000, height: 1000 },
      paper: { ...turned.paper!, toPattern: scaling(1) },
    };
    const { pattern: after } = trued(inPixels, { distance: { from: 'p1', to: 'p8', length: 28 } });
    expect(after.unit).toBe('mm');
    expect(after.scale).toMatchObject({ from: 'span', length: 28 });
    expect(distance(after.pins[0]!, after.pins[7]!)).toBeCloseTo(28, 6);
    expect(after.sheet?.width).toBeCloseTo(100, 6);
    // 10 pixels a millimetre are 254 an inch.
    expect('dpi' in after.scale && after.scale.dpi).toBeCloseTo(254, 6);
    const onPaper = applyAffine(invert(after.paper!.toPattern), after.paper?.stood?.p1 ?? after.pins[0]!);
    expect(onPaper.x).toBeCloseTo(inPixels.pins[0]!.x, 6);
  });

  test.each([
    [{ distance: { from: 'p1', to: 'nobody', length: 3 } }, 'unknown-pin'],
    [{ distance: { from: 'p1', to: '0', length: 3 } }, 'same-pins'],
  ])('%j is refused', (known, kind) => {
    expect(straightenPattern(pattern, known, usualChoice, silent)).toMatchObject({
      ok: false,
      trouble: { kind },
    });
  });

  test('an angle without a ground to apply it to is refused', () => {
    const random = seededRandom(3);
    const loose = patternFromPins(
      Array.from({ length: 5 }, () => applyAffine(rotation(1), { x: 90 * random(), y: 90 * random() })),
    );
    expect(straightenPattern(loose, { angle: 45 }, usualChoice, silent)).toMatchObject({
      ok: false,
      trouble: { kind: 'no-ground' },
    });
  });
});
