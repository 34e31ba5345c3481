import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrast } from '#base/colour/contrast.ts';
import { blueFilm, type Film, greyFilm, noFilm, underFilm } from '#base/colour/film.ts';
import { type LinearRgb, parseHex, toHex } from '#base/colour/srgb.ts';
import {
  BLACK_INK,
  isTintVisible,
  lineContrast,
  OKABE_ITO,
  tintDifference,
  visibleTint,
  WHITE_PAPER,
} from '#base/colour/visible.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const anyColour: fc.Arbitrary<LinearRgb> = fc.record({ red: share, green: share, blue: share });
const anyFilm: fc.Arbitrary<Film> = fc.record({ name: fc.constant('any'), passes: anyColour, veil: share });
const films = [blueFilm, greyFilm];

describe('under film', () => {
  it('no film changes nothing', () => {
    fc.assert(
      fc.property(anyColour, (colour) => {
        expect(underFilm(colour, noFilm)).toEqual({ ...colour });
      }),
    );
  });

  it('contrast is never higher than without it, where the film is grey', () => {
    const anyGreyFilm = fc
      .record({ pass: share, veil: share })
      .map(({ pass, veil }): Film => ({ name: 'any', passes: { red: pass, green: pass, blue: pass }, veil }));
    fc.assert(
      fc.property(anyGreyFilm, anyColour, anyColour, (film, one, other) => {
        const through = contrast(underFilm(one, film), underFilm(other, film));
        expect(through).toBeLessThanOrEqual(contrast(one, other) + 1e-9);
      }),
    );
  });

  it('stays between the veil and white, and keeps lighter things lighter', () => {
    fc.assert(
      fc.property(anyFilm, anyColour, anyColour, (film, one, other) => {
        const seen = underFilm(one, film);
        expect(seen.green).toBeGreaterThanOrEqual(film.veil - 1e-12);
        expect(seen.green).toBeLessThanOrEqual(1 + 1e-12);
        if (one.green < other.green)
          expect(seen.green).toBeLessThanOrEqual(underFilm(other, film).green + 1e-12);
      }),
    );
  });

  it('black lines on white paper can be read through both films, and pale grey ones cannot', () => {
    for (const film of films) {
      expect(lineContrast(BLACK_INK, WHITE_PAPER, film)).toBeGreaterThan(4.5);
      expect(lineContrast(parseHex('#bbbbbb')!, WHITE_PAPER, film)).toBeLessThan(2);
    }
  });

  it('pale blue fades under blue film more than pale yellow does', () => {
    expect(tintDifference(parseHex('#cfe2f3')!, blueFilm)).toBeLessThan(10);
    expect(tintDifference(parseHex('#fff2cc')!, blueFilm)).toBeGreaterThan(10);
  });
});

describe('a visible tint', () => {
  it('is found for any wanted colour', () => {
    fc.assert(
      fc.property(anyColour, (wanted) => {
        const tint = visibleTint(wanted, films);
        expect(tint).not.toBeNull();
        expect(isTintVisible(tint!, films)).toBe(true);
      }),
    );
  });

  it('is the wanted one where that is visible, so that choosing twice changes nothing', () => {
    for (const hex of OKABE_ITO) {
      const tint = visibleTint(parseHex(hex)!, films)!;
      expect(visibleTint(tint, films)).toEqual(tint);
    }
    expect(toHex(visibleTint(parseHex('#fff2cc')!, films)!)).toBe('#fff2cc');
  });

  it('is null where the film lets nothing through', () => {
    const foil: Film = { name: 'foil', passes: { red: 0, green: 0, blue: 0 }, veil: 0.5 };
    expect(visibleTint(parseHex('#fff2cc')!, [foil])).toBeNull();
  });
});
