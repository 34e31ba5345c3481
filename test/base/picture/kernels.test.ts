import { describe, expect, it } from 'vitest';
import { darkSpots } from '#base/picture/dark-spots.ts';
import { discWidths } from '#base/picture/disc-widths.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { groundAt, groundOf, hasInk } from '#base/picture/ground.ts';
import { inkRegions } from '#base/picture/regions.ts';
import { rimVotes } from '#base/picture/rim-votes.ts';
import { grown, shrink, shrunk } from '#base/picture/shrink.ts';
import { seededRandom } from '#base/random.ts';
import { canvas, disc, finished, strip } from '../../craft/trace/drawing.ts';

/** A picture in digits: 0 is white paper, 9 is black ink, a point is paper too. */
function digits(...rows: string[]): GreyPicture {
  const grey = rows.flatMap((row) => [...row].map((digit) => 250 - 25 * (digit === '.' ? 0 : Number(digit))));
  return { width: rows[0]!.length, height: rows.length, grey: Uint8Array.from(grey) };
}

describe('shrink', () => {
  it('takes the mean of each square, rounded, and drops what is left over', () => {
    const picture = {
      width: 5,
      height: 4,
      grey: Uint8Array.of(0, 4, 8, 8, 9, 8, 12, 8, 9, 9, 1, 1, 1, 1, 9, 1, 1, 1, 2, 9),
    };
    expect(shrink(picture, 2)).toEqual({ width: 2, height: 2, grey: Uint8Array.of(6, 8, 1, 1) });
    expect(shrink(picture, 3)).toMatchObject({ width: 1, height: 1 });
    expect(shrink(picture, 9)).toMatchObject({ width: 1, height: 1 });
    expect(shrink(picture, 1)).toBe(picture);
    expect(() => shrink(picture, 1.5)).toThrow(RangeError);
  });

  it('keeps places: the middle of a square of pixels is the middle of its pixel', () => {
    expect(grown(0, 2)).toBe(0.5);
    expect(grown(3, 3)).toBe(10);
    expect(shrunk(grown(7.25, 4), 4)).toBeCloseTo(7.25, 12);
  });
});

describe('groundOf', () => {
  it('follows light that falls off across the page, and sees the ink on it', () => {
    const page = canvas(320, 320);
    for (let k = 0; k < 10; k++) for (let l = 0; l < 10; l++) disc(page, 16 + 32 * k, 16 + 32 * l, 4);
    const even = finished(page, seededRandom(1), 240, 40, 1);
    const grey = even.grey.map((value, at) => value * (1 - 0.4 * ((at % 320) / 320)));
    const picture = { ...even, grey };
    const ground = groundOf(picture);
    expect(hasInk(ground)).toBe(true);
    for (const column of [40, 160, 280]) {
      const paper = 240 * (1 - 0.4 * (column / 320));
      expect(Math.abs(groundAt(ground, ground.level, picture, column, 150) - paper)).toBeLessThan(6);
    }
  });

  it('sees no ink on grainy paper, on one grey, or on a single pixel', () => {
    expect(hasInk(groundOf(finished(canvas(300, 300), seededRandom(2), 200, 0, 6)))).toBe(false);
    expect(hasInk(groundOf({ width: 50, height: 50, grey: new Uint8Array(2500) }))).toBe(false);
    expect(hasInk(groundOf({ width: 1, height: 1, grey: Uint8Array.of(9) }))).toBe(false);
  });
});

describe('inkRegions', () => {
  const picture = digits(
    '9.......99',
    '.9.....9..',
    '..9...9...',
    '...9.9....',
    '....9.....',
    '..........',
    '.99..9999.',
    '.99..9..9.',
    '.....9999.',
  );
  const { regions, at } = inkRegions(picture, groundOf(picture), 0.5);

  it('joins pixels by sides and corners, and branches that meet only later', () => {
    expect(regions).toEqual([
      { left: 0, top: 0, right: 9, bottom: 4, area: 10 },
      { left: 1, top: 6, right: 2, bottom: 7, area: 4 },
      { left: 5, top: 6, right: 8, bottom: 8, area: 10 },
    ]);
  });

  it('says which patch covers a pixel', () => {
    expect([at(9, 0), at(4, 4), at(2, 7), at(8, 7), at(6, 7), at(0, 8), at(3, -1), at(3, 9)]).toEqual([
      0, 0, 1, 2, -1, -1, -1, -1,
    ]);
  });
});

describe('three ways of looking for discs', () => {
  const page = canvas(400, 400);
  const discs = [
    { column: 60.3, row: 70.6 },
    { column: 200, row: 100.5 },
    { column: 330.2, row: 300 },
    { column: 120, row: 320.4 },
  ];
  for (const { column, row } of discs) disc(page, column, row, 4);
  strip(page, 20, 200, 380, 210, 3);
  strip(page, 200, 20, 200, 380, 3);
  const picture = finished(page, seededRandom(3), 235, 40, 2);
  const ground = groundOf(picture);
  const nearest = (places: readonly { column: number; row: number }[], to: (typeof discs)[number]) =>
    Math.min(...places.map(({ column, row }) => Math.hypot(column - to.column, row - to.row)));

  it('rimVotes: rims point at their centres, straight lines at nothing', () => {
    const centres = rimVotes(picture, ground, 4, 0.45);
    for (const place of discs) expect(nearest(centres, place)).toBeLessThan(0.5);
    expect(centres.filter((centre) => nearest(discs, centre) > 3)).toEqual([]);
  });

  it('darkSpots: dark middles stand out, even where lines run through them', () => {
    const spots = darkSpots(picture, ground, 8, 0.5);
    for (const place of discs) expect(nearest(spots, place)).toBeLessThan(2);
  });

  it('discWidths: the discs have their diameter, the lines do not count', () => {
    const widths = discWidths(picture, ground, 20);
    const likeDiscs = widths.filter((width) => Math.abs(width - 8) < 1);
    expect(likeDiscs.length).toBeGreaterThanOrEqual(3);
    expect(widths.length - likeDiscs.length).toBeLessThanOrEqual(2);
  });
});
