import { describe, expect, it } from 'vitest';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { normal, seededRandom } from '#base/random.ts';
import { findHoles, type TracedHole } from '#craft/trace/holes.ts';
import { edging } from '../../support/patterns/index.ts';
import { greyOf, renderScan } from '../../support/scan/index.ts';
import { scoreHoles } from '../../support/score.ts';
import { drawScan } from '../../support/trace-scans.ts';
import { canvas, disc, finished, strip } from './drawing.ts';

/** A net of thin lines whose crossings carry a dot each, except every third. */
function net(scale = 1) {
  const page = canvas(500 * scale, 500 * scale);
  const dots: { column: number; row: number; hidden: boolean }[] = [];
  for (let i = 0; i < 7; i++) {
    const at = (70 + i * 60) * scale;
    strip(page, at, 40 * scale, at, 460 * scale, 2.4 * scale);
    strip(page, 40 * scale, at, 460 * scale, at, 2.4 * scale);
    for (let j = 0; j < 7; j++) {
      if ((i + j) % 3 === 0) continue;
      const column = (70 + i * 60 + 0.3 * (i % 3)) * scale;
      const row = (70 + j * 60 + 0.2 * (j % 4)) * scale;
      dots.push({ column, row, hidden: false });
      disc(page, column, row, 3.6 * scale);
    }
  }
  return { page, dots };
}

const sure = (holes: readonly TracedHole[]) => holes.filter(({ confidence }) => confidence > 0.5);

describe('findHoles on a net of lines', () => {
  const { page, dots } = net();
  const picture = finished(page, seededRandom(1));

  it('finds each dot to a third of a pixel, and none where lines only cross', () => {
    const { holes, dotDiameter, kind, notes } = findHoles(picture, { dpi: 300 });
    expect({ kind, notes }).toEqual({ kind: 'printed', notes: [] });
    expect(Math.abs(dotDiameter - 7.2)).toBeLessThan(0.6);
    const score = scoreHoles(sure(holes), dots, 4);
    expect(score).toMatchObject({ right: dots.length, false: 0, missed: 0 });
    expect(score.rms).toBeLessThan(0.2);
    for (const hole of sure(holes)) expect(Math.abs(hole.diameter - 7.2)).toBeLessThan(0.7);
  });

  it('needs no resolution to be told', () => {
    expect(scoreHoles(sure(findHoles(picture).holes), dots, 4).f1).toBe(1);
  });

  it('finds light dots on dark ground too, and says so', () => {
    const negative = { ...picture, grey: picture.grey.map((value) => 255 - value) };
    const { holes, notes } = findHoles(negative, { dpi: 300 });
    expect(notes).toEqual(['light-dots']);
    expect(scoreHoles(sure(holes), dots, 4).f1).toBe(1);
  });

  it('gives the same result every time', () => {
    expect(findHoles(picture, { dpi: 300 })).toEqual(findHoles(picture, { dpi: 300 }));
  });

  it('says why each doubtful one is doubtful', () => {
    for (const { confidence, doubt } of findHoles(picture, { dpi: 300 }).holes) {
      if (confidence < 0.9) expect(doubt.length).toBeGreaterThan(0);
      else expect(doubt).toEqual([]);
    }
  });

  it('reports progress from start to end', () => {
    const shares: number[] = [];
    findHoles(picture, { dpi: 300, progress: (_, share) => shares.push(share) });
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});

describe('the same dots, however the picture lies', () => {
  const { page, dots } = net();
  const picture = finished(page, seededRandom(2));
  const before = sure(findHoles(picture, { dpi: 300 }).holes);

  it('turned by a quarter', () => {
    const after = sure(findHoles(quarterTurn(picture), { dpi: 300 }).holes);
    const expected = before.map(({ column, row }) => ({ column: picture.height - 1 - row, row: column }));
    expectSame(after, expected, 0.15);
  });

  it('shifted by whole pixels', () => {
    const after = sure(findHoles(shifted(picture, 13, 7), { dpi: 300 }).holes);
    const expected = before.map(({ column, row }) => ({ column: column + 13, row: row + 7 }));
    expectSame(after, expected, 0.1);
  });

  it('at twice the resolution', () => {
    const { page: large } = net(2);
    const after = sure(findHoles(finished(large, seededRandom(3)), { dpi: 600 }).holes);
    expectSame(
      after.map(({ column, row }) => ({ column: column / 2, row: row / 2 })),
      dots,
      0.4,
    );
  });
});

// Floors below what is reached; `bench/trace.ts` measures many more pages.
describe.each([501, 502, 503, 504, 505, 506, 507, 508])('findHoles on generated page %i', (seed) => {
  it('agrees with the truth', async () => {
    const { picture, truth } = await drawScan(seed);
    const mm = truth.dpi / 25.4;
    const { holes } = findHoles(picture, { dpi: truth.dpi });
    const score = scoreHoles(holes, truth.holes, 0.35 * mm);
    expect(score.f1).toBeGreaterThan(0.96);
    expect(score.rms / mm).toBeLessThan(0.045);
    expect(scoreHoles(sure(holes), truth.holes, 0.35 * mm).f1).toBeGreaterThan(0.97);
  });
});

it('tells pricked card from print', async () => {
  const kinds = new Set<string>();
  for (let seed = 1; seed < 200 && kinds.size < 2; seed++) {
    if (seed % 4 !== 0) continue;
    const scan = await drawScan(seed);
    const kind = findHoles(scan.picture, { dpi: scan.truth.dpi }).kind;
    expect(kind).toBe(scan.name.includes('card') ? 'pricked' : 'printed');
    kinds.add(kind);
  }
  expect(kinds.size).toBe(2);
});

describe('findHoles where there are no dots', () => {
  const flat = (width: number, height: number, value: number): GreyPicture => ({
    width,
    height,
    grey: new Uint8Array(width * height).fill(value),
  });
  const nothing = { holes: [], dotDiameter: 0, kind: 'printed', notes: ['no-dots'] };

  it.each([
    ['one pixel', flat(1, 1, 0)],
    ['one row', flat(500, 1, 200)],
    ['a narrow strip', flat(3, 100_000, 128)],
    ['all black', flat(400, 300, 0)],
    ['all white', flat(400, 300, 255)],
    ['grainy paper', finished(canvas(400, 400), seededRandom(4))],
  ])('%s: nothing', (_, picture) => {
    expect(findHoles(picture)).toEqual(nothing);
    expect(findHoles(picture, { dpi: 300 })).toEqual(nothing);
  });

  it('a page of print: neither full stops nor the dots of i and j are pins', () => {
    const known = edging({ repeats: 1 });
    const words = {
      ...known,
      pattern: { ...known.pattern, pins: [], marks: [], areas: [], runs: [] },
      roles: [],
    };
    const notes = [
      'Wind twenty pairs in all. In the fifth row, hang in two; finish with a sewing.',
      'A line of i, j and full stops... ; : ! ? in this instruction, with little in it.',
      'Minimum widths: 12.5 mm, 13.5 mm, 14.5 mm. Dip, drip, sip.',
      'In, it, is, if: initial digits 1. 2. 3. 4. 5. 6. 7. 8. 9.',
    ];
    const page = { width: 148, height: 60 };
    const blank = { ...words, pattern: { ...words.pattern, pins: known.pattern.pins.slice(0, 1) } };
    const options = { page, title: 'Notes in print', notes, numbers: 0, speckle: 0 };
    const picture = greyOf(renderScan(blank, options, seededRandom(3)));
    expect(sure(findHoles(picture, { dpi: 300 }).holes).length).toBeLessThan(8);
    expect(sure(findHoles(picture).holes).length).toBeLessThan(8);
  });

  it('noise from black to white: hardly anything, and nothing sure of itself', () => {
    const random = seededRandom(5);
    const picture = flat(600, 600, 0);
    for (let at = 0; at < picture.grey.length; at++) {
      picture.grey[at] = Math.max(0, Math.min(255, 128 + 60 * normal(random)));
    }
    expect(sure(findHoles(picture, { dpi: 300 }).holes).length).toBeLessThan(20);
  });

  it('lines alone: of 64 crossings and 34 line ends hardly one passes for a dot', () => {
    const page = canvas(500, 500);
    for (let k = 0; k < 8; k++) {
      strip(page, 50 + 55 * k, 30, 70 + 50 * k, 470, 2.5);
      strip(page, 30, 50 + 55 * k, 460, 30 + 58 * k, 2);
    }
    strip(page, 60, 240, 420, 260, 8);
    expect(sure(findHoles(finished(page, seededRandom(6)), { dpi: 300 }).holes).length).toBeLessThanOrEqual(
      2,
    );
  });
});

function quarterTurn({ width, height, grey }: GreyPicture): GreyPicture {
  const turned = new Uint8Array(grey.length);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      turned[column * height + (height - 1 - row)] = grey[row * width + column]!;
    }
  }
  return { width: height, height: width, grey: turned };
}

function shifted({ width, height, grey }: GreyPicture, right: number, down: number): GreyPicture {
  const larger = { width: width + right, height: height + down };
  const moved = new Uint8Array(larger.width * larger.height).fill(235);
  for (let row = 0; row < height; row++) {
    moved.set(grey.subarray(row * width, (row + 1) * width), (row + down) * larger.width + right);
  }
  return { ...larger, grey: moved };
}

function expectSame(found: readonly PixelPoint[], expected: readonly PixelPoint[], within: number): void {
  const score = scoreHoles(
    found,
    expected.map((place) => ({ ...place, hidden: false })),
    3,
  );
  expect(score).toMatchObject({ right: expected.length, false: 0, missed: 0 });
  expect(score.rms).toBeLessThan(within);
}
