import { describe, expect, test } from 'vitest';
import { silent } from '#base/progress.ts';
import type { PictureIn } from '#jobs/picture/picture.ts';
import { traceAgain } from '#jobs/trace/again.ts';
import { patternOnPaper, scaleOfPaper, withScale } from '#jobs/trace/paper.ts';
import { BENCH } from '#jobs/words/door.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** Seven rows of nine dots, 40 dots apart, each 9 dots wide, on a page of 400 by 320. */
function picture(scale: PictureIn['scale']): PictureIn {
  const [width, height] = [400, 320];
  const grey = new Uint8Array(width * height).fill(255);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const [x, y] = [((column - 20) % 40) - 20, ((row - 20) % 40) - 20];
      if (column >= 20 && column < 380 && row >= 20 && row < 300 && Math.hypot(x, y) < 4.5)
        grey[row * width + column] = 0;
    }
  }
  const file = { name: 'paper.png', bytes: new Uint8Array([1, 2, 3]) };
  return { width, height, grey, scale, notes: [], file };
}

function traced(pattern: Pattern, seen: PictureIn): Pattern {
  const found = traceAgain(pattern, seen, silent, BENCH);
  if (!found.ok) throw new Error(found.trouble.kind);
  return found.value.pattern;
}

describe('a pattern on its paper', () => {
  const unknown = picture({ kind: 'none' });

  test('is in pixels where nobody knows the scale, else in millimetres', () => {
    expect(patternOnPaper(unknown, { from: 'none' })).toMatchObject({
      unit: 'px',
      sheet: { width: 400, height: 320 },
    });
    const known = patternOnPaper(unknown, { from: 'file', dpi: 254 });
    expect(known).toMatchObject({ unit: 'mm', scale: { from: 'file', dpi: 254 } });
    expect(known.sheet!.width).toBeCloseTo(40, 9);
  });

  test('measuring it before its pins are found, or after, gives the same places', () => {
    const scale = { from: 'span', dpi: 254, length: 32 } as const;
    const empty = patternOnPaper(unknown, { from: 'none' });
    const before = traced(withScale(empty, scale), unknown);
    const after = withScale(traced(empty, unknown), scale);
    expect(before.pins.length).toBe(63);
    expect([after.unit, after.scale, after.sheet]).toEqual([before.unit, before.scale, before.sheet]);
    for (const [n, { x, y }] of before.pins.entries()) {
      expect(after.pins[n]!.x).toBeCloseTo(x, 9);
      expect(after.pins[n]!.y).toBeCloseTo(y, 9);
    }
  });

  test('another scale makes all that was found as much larger, and leaves what a person chose', () => {
    const small = traced(patternOnPaper(unknown, { from: 'given', dpi: 508 }), unknown);
    const chosen: Pattern = { ...small, sizes: { pin: 0.5, hole: 0.6, footsideSpacing: 2 } };
    const large = withScale(chosen, { from: 'given', dpi: 254 });
    expect(large.sizes).toEqual({ pin: 0.5, hole: 0.6, footsideSpacing: 4 });
    expect(large.pins[10]!.diameter).toBeCloseTo(2 * small.pins[10]!.diameter!, 9);
    expect(large.pins[10]!.x).toBeCloseTo(2 * small.pins[10]!.x, 9);
    expect(withScale(large, { from: 'given', dpi: 508 }).pins[10]!.x).toBeCloseTo(small.pins[10]!.x, 9);
    expect(() =>
      withScale({ ...small, paper: undefined } as unknown as Pattern, { from: 'given', dpi: 300 }),
    ).toThrow(RangeError);
  });

  test('finding its pins again keeps whose it is, its sizes, its scale and its picture', () => {
    const empty = patternOnPaper(unknown, { from: 'none' });
    const had: Pattern = {
      ...withScale(empty, { from: 'span', dpi: 200, length: 50 }),
      about: { name: 'Ours', maker: 'Somebody' },
      sizes: { pin: 0.5 },
      paper: {
        ...withScale(empty, { from: 'given', dpi: 200 }).paper!,
        entry: 'scans/first.png',
        sha256: 'ab',
      },
    };
    const again = traced(had, unknown);
    expect(again).toMatchObject({ about: had.about, sizes: had.sizes, scale: had.scale, sheet: had.sheet });
    expect(again.paper).toEqual(had.paper);
    expect(again.pins.length).toBe(63);
  });

  test('a size that nothing vouches for counts as given, and is not lost', () => {
    const had: Pattern = { ...patternOnPaper(unknown, { from: 'given', dpi: 300 }), scale: { from: 'none' } };
    expect(scaleOfPaper(had)!.dpi).toBeCloseTo(300, 9);
    expect(traced(had, unknown).unit).toBe('mm');
    expect(scaleOfPaper(patternOnPaper(unknown, { from: 'none' }))).toBeNull();
  });

  test('dots that are not square do not keep its pins from being found', () => {
    const uneven = picture({ kind: 'unequal', across: 300, down: 150 });
    const again = traced(patternOnPaper(uneven, { from: 'none' }), uneven);
    expect([again.unit, again.pins.length]).toEqual(['px', 63]);
  });
});
