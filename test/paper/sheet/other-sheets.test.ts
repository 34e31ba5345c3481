import { describe, expect, test } from 'vitest';
import { blueFilm, greyFilm, underFilm } from '#base/colour/film.ts';
import { parseHex, toHex } from '#base/colour/srgb.ts';
import { isTintVisible, lineContrast, WHITE_PAPER } from '#base/colour/visible.ts';
import { distance } from '#base/geometry/point.ts';
import { seededRandom } from '#base/random.ts';
import type { Picture } from '#paper/drawing/mark.ts';
import { GIMP_COLOUR } from '#paper/ink/pattern-ink.ts';
import { films, stitchTints, tintUnder } from '#paper/ink/tints.ts';
import { beforeAndAfterSheet } from '#paper/sheet/before-and-after.ts';
import { filmPreview } from '#paper/sheet/film-preview.ts';
import { guideSteps } from '#paper/sheet/guide-steps.ts';
import { sheetContext } from '#paper/sheet/sheet.ts';
import { summarySheets } from '#paper/sheet/summary.ts';
import { testSheet } from '#paper/sheet/test-sheet.ts';
import { edging, fine, jitter } from '../../support/patterns/index.ts';
import { typeface } from '../support/fonts.ts';
import { paper, plainOrder, print, stated } from '../support/print.ts';
import { expectSheetLaws, overlappingWords } from './laws.ts';

const context = sheetContext({ name: 'Jonquil' }, { typeface, revision: 'r1' });

describe('the pricking guide', () => {
  const known = edging();
  const order = plainOrder(known);
  const guide = print(stated(known), { order }).sheets.filter(({ kind }) => kind === 'pricking-guide');
  const words = guide.flatMap(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
  );

  test('counts every hole once', () => {
    const total = guideSteps(order).reduce((sum, { holes }) => sum + holes, 0);
    expect(total).toBe(known.pattern.pins.length);
    expect(words).toContain(`${total} holes in ${guideSteps(order).length} steps`);
  });

  test('counts the holes of every ruler line', () => {
    const lines = order.passes.filter(({ ruler }) => ruler);
    expect(words.some((text) => text.includes(`${lines.length} lines along a ruler`))).toBe(true);
    const counted = words.filter((text) => /^\d+$/.test(text)).map(Number);
    for (const { order: pins } of lines) expect(counted).toContain(pins.length);
  });

  test('is printed for both ways, and left out where no order is given', () => {
    expect(guide.length).toBeGreaterThan(0);
    expect(print(stated(known)).sheets.some(({ kind }) => kind === 'pricking-guide')).toBe(false);
    const film = print(stated(known), { order, way: 'film' }).sheets;
    expect(film.some(({ kind }) => kind === 'pricking-guide')).toBe(true);
  });
});

describe('tints and lines under film', () => {
  test.each(['blue', 'grey'] as const)('every stitch keeps a tint that is seen under %s film', (name) => {
    for (const wanted of Object.values(stitchTints)) {
      expect(isTintVisible(parseHex(tintUnder(wanted, films[name]))!, [films[name]])).toBe(true);
    }
  });

  test.each([blueFilm, greyFilm])(
    'a dot on a gimp line is seen under $name film, and the line on the paper',
    (film) => {
      // WCAG 2.2, success criterion 1.4.11: 3 to 1 for what has to be seen.
      const black = { red: 0, green: 0, blue: 0 };
      expect(lineContrast(black, parseHex(GIMP_COLOUR)!, film)).toBeGreaterThanOrEqual(3);
      expect(lineContrast(black, WHITE_PAPER, film)).toBeGreaterThanOrEqual(3);
      expect(isTintVisible(parseHex(GIMP_COLOUR)!, [film])).toBe(true);
    },
  );

  test('a tint that the film would hide is changed, with a note', () => {
    const pattern = stated(edging({ tint: '#f4f9ff' }));
    const { notes } = print(pattern, { way: 'film', film: 'blue' });
    expect(notes.some(({ kind }) => kind === 'tint-changed')).toBe(true);
    expect(print(pattern, { way: 'through' }).notes).toEqual([]);
  });

  test('the film is a little larger than the card, and the card than the pattern', () => {
    const { sheets } = print(stated(edging()), { way: 'film' });
    const [film, card] = sheets[0]!.marks.flatMap((mark) =>
      mark.role === 'outline' && mark.kind === 'stroke' ? [mark.path] : [],
    );
    const width = (path: typeof film): number => {
      const xs = path!.flatMap((step) => ('to' in step ? [step.to.x] : []));
      return Math.max(...xs) - Math.min(...xs);
    };
    expect(width(film)).toBeGreaterThan(width(card));
  });

  test('the preview colours only what lies under the film', () => {
    const sheet = print(stated(fine()), { way: 'film' }).sheets[0]!;
    const preview = filmPreview(sheet, blueFilm).sheet;
    expect(preview.id).toBe('film-preview-a1');
    expect(preview.marks).toHaveLength(sheet.marks.length + 1);
    const header = (marks: typeof sheet.marks) =>
      marks.find(
        (mark) =>
          mark.kind === 'text' &&
          mark.text === sheet.marks.find((m) => m.kind === 'text' && m.role === 'note')!.kind,
      );
    expect(header(preview.marks)).toEqual(header(sheet.marks));
    const changed = preview.marks.slice(1).filter((mark, k) => mark !== sheet.marks[k]);
    expect(changed.length).toBeGreaterThan(100);
    expect(changed.length).toBeLessThan(sheet.marks.length);
  });
});

describe('a picture of the paper under film', () => {
  const pixels = {
    form: 'raster',
    width: 2,
    height: 1,
    channels: 1,
    bytes: new Uint8Array([0, 255]),
  } as const;
  const under = (picture: Picture) => {
    const place = { a: 10, b: 0, c: 0, d: 10, e: 0, f: 0 };
    return filmPreview(
      print(stated(edging()), { way: 'film', picture: { picture, place } }).sheets[0]!,
      blueFilm,
    );
  };

  test('takes the colours that black and white take under it', () => {
    const { sheet, notes } = under(pixels);
    const image = sheet.marks.find((mark) => mark.kind === 'image');
    if (image?.kind !== 'image') throw new Error('no picture');
    const hex = (from: number): string =>
      `#${[...image.picture.bytes.slice(from, from + 3)].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
    expect(image.picture.channels).toBe(3);
    expect(hex(0)).toBe(toHex(underFilm(parseHex('#000000')!, blueFilm)));
    expect(hex(3)).toBe(toHex(underFilm(parseHex('#ffffff')!, blueFilm)));
    expect(notes).toEqual([]);
  });

  test('stays as it is, with a note, where it is packed', () => {
    const { notes } = under({ ...pixels, form: 'jpeg' });
    expect(notes).toMatchObject([{ kind: 'not-expressed' }]);
  });
});

describe('before and after', () => {
  const ideal = edging({ repeats: 2 });
  const hand = jitter(ideal, 0.1, seededRandom(7));
  const moves = {
    stood: hand.pattern.pins,
    now: ideal.pattern.pins,
    missing: [{ x: 3, y: 3 }],
    stray: [5],
    doubtful: [7, 8],
  };

  test('shows every pin, its move and each proposal, and keeps the laws of all sheets', () => {
    const sheet = beforeAndAfterSheet(context, paper('A4'), moves);
    expectSheetLaws(sheet);
    expect(overlappingWords(sheet)).toEqual([]);
    const kinds = (kind: string): number => sheet.marks.filter((mark) => mark.kind === kind).length;
    const pins = ideal.pattern.pins.length;
    // One sign each in the key as well.
    expect(kinds('ring')).toBe(pins + 2 + 2);
    expect(kinds('disc')).toBe(pins + 1);
    expect(kinds('cross')).toBe(1 + 1 + 2);
    const largest = Math.max(...moves.stood.map((from, k) => distance(from, moves.now[k]!)));
    const words = sheet.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ');
    expect(words).toContain(`at most ${largest.toFixed(2)} mm`);
  });

  test('nothing moved says so', () => {
    const still = { ...moves, stood: moves.now, missing: [], stray: [], doubtful: [] };
    const words = beforeAndAfterSheet(context, paper('Letter'), still)
      .marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
      .join(' ');
    expect(words).toContain('0 moved, at most 0.00 mm');
  });

  test('no pins at all is an empty picture', () => {
    expectSheetLaws(
      beforeAndAfterSheet(context, paper('A4'), { stood: [], now: [], missing: [], stray: [], doubtful: [] }),
    );
  });
});

describe('sheets to read', () => {
  const long = Array.from({ length: 60 }, (_, k) => ({
    words: `Finding ${k}: ${'a gap in the ground '.repeat(1 + (k % 9))}`,
    toDo: k % 2 === 0,
  }));

  test('a long summary goes on over the page and loses nothing', () => {
    const sheets = summarySheets(context, paper('A4'), [
      { heading: 'Found', text: ['Some words.'], items: long },
    ]);
    expect(sheets.length).toBeGreaterThan(1);
    for (const sheet of sheets) {
      expectSheetLaws(sheet);
      expect(overlappingWords(sheet)).toEqual([]);
    }
    const words = sheets
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
      .join(' ');
    for (let k = 0; k < long.length; k++) expect(words).toContain(`Finding ${k}:`);
    expect(words).toContain('2 of 2'.replace(/2/g, `${sheets.length}`));
  });

  test.each(['A4', 'Letter', 'A5'])('the test sheet on %s', (name) => {
    for (const sheet of testSheet(context, paper(name))) {
      expectSheetLaws(sheet);
      expect(overlappingWords(sheet)).toEqual([]);
    }
  });
});
