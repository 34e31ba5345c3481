import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calibrateTroubleInWords } from '#jobs/words/calibrate.ts';
import { likelyCause } from '#paper/calibrate/cause.ts';
import { calibrate, factor, isVerified } from '#paper/calibrate/factors.ts';
import { afterSecondPrint, printerProfileSchema, profileOf } from '#paper/calibrate/profile.ts';

const nominal = { across: 170, down: 230, falling: Math.hypot(170, 230), rising: Math.hypot(170, 230) };

describe('factors', () => {
  test('nominal by measured: 100.4 for 100 gives 0.99602', () => {
    expect(factor(100, 100.4)).toBeCloseTo(0.99602, 5);
    const found = calibrate({ across: 100, down: 100 }, { across: 100.4, down: 100 }, false);
    expect(found).toMatchObject({ ok: true, value: { correction: { y: 1, lean: 0 } } });
    expect(found.ok && found.value.correction.x).toBeCloseTo(0.99602, 5);
  });

  test('a printer that stretches by a factor is corrected by its inverse, on each axis', () => {
    const stretch = fc.double({ min: 0.971, max: 1.029, noNaN: true });
    fc.assert(
      fc.property(stretch, stretch, (x, y) => {
        const found = calibrate(nominal, { across: 170 * x, down: 230 * y }, false);
        if (!found.ok) throw new Error('refused');
        expect(found.value.correction.x * x).toBeCloseTo(1, 12);
        expect(found.value.correction.y * y).toBeCloseTo(1, 12);
      }),
    );
  });

  test('the diagonals give the lean of a sheared print', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.01, max: 0.01, noNaN: true }), (lean) => {
        const [sx, sy] = [1.004, 0.997];
        const measured = {
          across: 170 * sx,
          down: 230 * sy,
          falling: Math.hypot(170 * sx + lean * 230, 230 * sy),
          rising: Math.hypot(170 * sx - lean * 230, 230 * sy),
        };
        const found = calibrate(nominal, measured, true);
        if (!found.ok) throw new Error('refused');
        expect(found.value.leanOver200! / 200).toBeCloseTo(lean, 9);
        const matters = Math.abs(lean * 200) > 0.3;
        expect(found.value.leanMatters).toBe(matters);
        expect(found.value.correction.lean).toBeCloseTo(matters ? lean : 0, 9);
        const declined = calibrate(nominal, measured, false);
        expect(declined.ok && declined.value.correction.lean).toBe(0);
      }),
    );
  });

  test('outside 0.97 to 1.03 it refuses and says what is likely wrong', () => {
    // 94.1 % = 279.4/297 and 97.3 % = 210/215.9: the two papers' own sizes (ISO 216, ANSI/ASME Y14.1).
    const a4OnLetter = calibrate(nominal, { across: 170 * (279.4 / 297), down: 230 * (279.4 / 297) }, false);
    expect(a4OnLetter).toMatchObject({
      ok: false,
      trouble: { kind: 'reading-out-of-range', cause: 'a4-on-letter' },
    });
    if (!a4OnLetter.ok) expect(calibrateTroubleInWords(a4OnLetter.trouble)).toContain('94.1 %');
    expect(calibrate(nominal, { across: 170, down: 230 * 1.06 }, false)).toMatchObject({
      ok: false,
      trouble: { axis: 'down', cause: 'browser-print' },
    });
    expect(calibrate(nominal, { across: 17, down: 230 }, false)).toMatchObject({ ok: false });
    expect(calibrate(nominal, { across: Number.NaN, down: 230 }, false)).toMatchObject({
      ok: false,
      trouble: { kind: 'reading-impossible' },
    });
  });

  test('causes by what a ruler measures', () => {
    expect([0.962, 0.98].map(likelyCause)).toEqual(['fit-to-page', 'fit-to-page']);
    expect(likelyCause(0.9727)).toBe('letter-on-a4');
    expect(likelyCause(1.021)).toBe('borderless');
    expect([0.995, 1, 1.004].map(likelyCause)).toEqual([undefined, undefined, undefined]);
  });

  test('a fit to the page within the range is still named', () => {
    const found = calibrate(nominal, { across: 170 * 0.975, down: 230 * 0.975 }, false);
    expect(found).toMatchObject({ ok: true, value: { cause: 'fit-to-page' } });
  });

  test('verified only if both axes are within 0.2 %', () => {
    expect(isVerified(nominal, { across: 170.3, down: 229.6 })).toBe(true);
    expect(isVerified(nominal, { across: 170.4, down: 230 })).toBe(false);
    expect(isVerified(nominal, { across: 170, down: 229.5 })).toBe(false);
  });
});

describe('readings', () => {
  test('lead to a profile that only a true second print verifies', () => {
    const found = calibrate(nominal, { across: 170.7, down: 229.5 }, false);
    if (!found.ok) throw new Error('refused');
    const names = { name: 'Kitchen printer', use: 'print', paper: 'A4', date: '2026-11-25' } as const;
    const profile = profileOf(names, found.value.correction, 0.1);
    expect(printerProfileSchema.parse(profile)).toEqual(profile);
    expect(profile.verified).toBe(false);
    expect(afterSecondPrint(profile, nominal, { across: 170.1, down: 230.2 }).verified).toBe(true);
    expect(afterSecondPrint(profile, nominal, { across: 170.1, down: 231 }).verified).toBe(false);
  });
});

describe('a profile', () => {
  const profile = {
    format: 'pinlight-printer',
    version: 1,
    name: 'Kitchen printer',
    use: 'print',
    paper: 'A4',
    date: '2026-11-25',
    x: 0.996,
    y: 1.002,
    lean: 0,
    inkSpread: 0.1,
    verified: false,
  };

  test('is taken as it was written, and nothing else is', () => {
    expect(printerProfileSchema.parse(profile)).toEqual(profile);
    for (const wrong of [
      { x: 0.9 },
      { inkSpread: 0.5 },
      { date: '25.11.2026' },
      { version: 2 },
      { extra: 1 },
      { name: '' },
      { y: Number.NaN },
    ]) {
      expect(printerProfileSchema.safeParse({ ...profile, ...wrong }).success).toBe(false);
    }
  });
});
