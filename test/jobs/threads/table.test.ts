import { describe, expect, test } from 'vitest';
import { type PaperSize, paperNamed } from '#base/units/paper.ts';
import { type Thread, threadOf } from '#craft/size/thread.ts';
import { sizePattern } from '#jobs/size/size.ts';
import { sizeSheets, USUAL_SCALES } from '#jobs/threads/table.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import type { Sheet } from '#paper/sheet/sheet.ts';
import { expectSheetLaws, overlappingWords } from '../../paper/sheet/laws.ts';
import { typeface } from '../../paper/support/fonts.ts';
import { edging } from '../../support/patterns/index.ts';
import { plainSizeWish } from '../../support/plain-size-wish.ts';

function thread(name: string, wrapsPerCm: number): Thread {
  const read = threadOf({ name, fibre: 'linen', wrapsPerCm });
  if (!read.ok) throw new Error(read.trouble.kind);
  return read.value;
}

function sheets(threads: readonly Thread[], paper: PaperSize, scales = USUAL_SCALES) {
  const sizing = sizePattern(
    { ...edging().pattern, sizes: { footsideSpacing: 4 } },
    { ...plainSizeWish, threads },
    () => {},
  );
  if (!sizing.ok) throw new Error(sizing.trouble.kind);
  return sizeSheets(sizing.value, { typeface, paper, scales });
}

function made(...args: Parameters<typeof sheets>): readonly Sheet[] {
  const result = sheets(...args);
  if (!result.ok) throw new Error(result.trouble.kind);
  return result.value;
}

const words = (sheet: Sheet): string =>
  sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');

const some = [60, 45, 36, 30, 24, 20].map((wraps) => thread(`Reel of ${wraps}`, wraps));

describe('the table of threads', () => {
  test.each(['A4', 'Letter', 'A3'])('keeps the laws of all sheets on %s', (name) => {
    const all = made(some, paperNamed(name)!);
    expect(all.map(({ id }) => id)).toEqual(['thread-table', 'cloth-picture']);
    for (const sheet of all) {
      expectSheetLaws(sheet);
      expect(overlappingWords(sheet)).toEqual([]);
    }
  });

  test('has a line for every thread, however many, and goes on over the page', () => {
    const many = Array.from({ length: 40 }, (_, k) =>
      thread(`Reel ${k} ${'of a very long name '.repeat(4)}`, 10 + k),
    );
    const all = made(many, paperNamed('A4')!);
    const said = all.map(words).join(' ');
    for (let k = 0; k < 40; k++) expect(said).toContain(`Reel ${k} `);
    for (const sheet of all) {
      expectSheetLaws(sheet);
      expect(overlappingWords(sheet)).toEqual([]);
    }
  });

  test('marks as right what fills the gap with twelve wraps', () => {
    // Common practice, from memory: 4 mm and 30 wraps a cm are 12 wraps.
    const [table] = made([thread('Right', 30), thread('Far too thick', 8)], paperNamed('A4')!, [1]);
    // One sign in the table and one in the key; bullets are smaller.
    const discs = table!.marks.filter((mark) => mark.kind === 'disc' && mark.diameter > 3);
    expect(discs).toHaveLength(2);
    expect(words(table!)).toContain('12.0');
    expect(words(table!)).toContain('from memory');
  });

  test('does not fit on paper that is too narrow', () => {
    expect(sheets(some, paperNamed('A5')!)).toMatchObject({
      ok: false,
      trouble: { kind: 'print-paper-too-small', paper: 'A5' },
    });
    for (const sheet of made(some, paperNamed('A5')!, [0.8, 1])) expectSheetLaws(sheet);
  });
});

describe('the picture of the cloth', () => {
  const fills = (marks: readonly InkMark[]) => marks.filter((mark) => mark.kind === 'fill');
  /** Share of a patch, as large as life, that its bands hide: by what is drawn, not by the formula. */
  function hidden(sheet: Sheet, patch: number): number {
    const grounds = fills(sheet.marks)
      .map((mark, at) => ({ mark, at }))
      .filter(({ mark }) => mark.colour === '#33414a');
    const [start, end] = [grounds[patch]!, grounds[patch + 1]!];
    const box = boxOf(start.mark);
    const bands = fills(sheet.marks)
      .slice(start.at + 1, end.at)
      .map(boxOf);
    const side = 400;
    let count = 0;
    for (let i = 0; i < side; i++) {
      for (let j = 0; j < side; j++) {
        const x = box.left + ((i + 0.5) / side) * (box.right - box.left);
        const y = box.top + ((j + 0.5) / side) * (box.bottom - box.top);
        if (bands.some((band) => x >= band.left && x <= band.right && y >= band.top && y <= band.bottom))
          count++;
      }
    }
    return count / side ** 2;
  }

  function boxOf(mark: InkMark) {
    const points = mark.kind === 'fill' ? mark.path.flatMap((step) => ('to' in step ? [step.to] : [])) : [];
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
  }

  test('hides as much of the ground as it says: counted on the sheet', () => {
    const [, sheet] = made([thread('Reel', 30)], paperNamed('A4')!, [1]);
    const said = [...words(sheet!).matchAll(/hide (\d+) % of the ground/g)].map(
      ([, share]) => Number(share) / 100,
    );
    expect(said).toHaveLength(3);
    said.forEach((share, patch) => {
      // A patch ends somewhere in a gap or on a thread: half a per cent each way, and the rounding of the words.
      expect(Math.abs(hidden(sheet!, patch) - share)).toBeLessThan(0.02);
    });
    expect(said).toEqual(said.toSorted((a, b) => a - b));
  });
});
