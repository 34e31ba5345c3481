import { describe, expect, test } from 'vitest';
import type { GreyPicture } from '#base/picture/grey.ts';
import { seededRandom } from '#base/random.ts';
import { judgeCard } from '#craft/light/judge.ts';
import { photographCard, scoreOf } from '../../support/card/index.ts';
import { edging, fine, round, tape } from '../../support/patterns/index.ts';

const large = { width: 2048, height: 1536, turn: 25, tilt: 5 } as const;
const own = fine({ repeats: 1, seed: 3 }).pattern.pins;

describe('a photo of something else is refused, never called good', () => {
  test.each([
    ['another fine ground of the same net', fine({ repeats: 1, seed: 8 })],
    ['an edging', edging({ repeats: 2 })],
    ['a tape', tape({ repeats: 2 })],
    ['a round mat', round({ innerRadius: 12 })],
  ])('%s', (_, { pattern }) => {
    const { picture } = photographCard(pattern.pins, large, seededRandom(5));
    const result = judgeCard(picture, own);
    expect(result.ok).toBe(false);
    if (!result.ok) expect(result.trouble.kind).toMatch(/^light-(no-match|poor-match|few-holes|blurred)$/);
  });

  const random = seededRandom(4);
  test.each<[string, (column: number, row: number) => number]>([
    ['nothing but black', () => 0],
    ['nothing but white', () => 255],
    ['a slope of light', (column) => column / 4],
    ['grain', () => 255 * random()],
    ['dust', () => (random() < 0.002 ? 255 : 40)],
  ])('%s', (_, grey) => {
    const result = judgeCard(pictureOf(1000, 800, grey), own);
    expect(result).toMatchObject({ ok: false, trouble: { kind: 'light-no-holes' } });
  });

  test.each([
    [0, 0],
    [1, 1],
    [3, 500],
  ])('a picture of %i by %i pixels', (width, height) => {
    expect(
      judgeCard(
        pictureOf(width, height, () => 9),
        own,
      ).ok,
    ).toBe(false);
  });

  test('a pattern of a few pins is not matched by chance', () => {
    const result = judgeCard(
      pictureOf(100, 100, () => 0),
      own.slice(0, 7),
    );
    expect(result).toMatchObject({ ok: false, trouble: { kind: 'light-few-pins', pins: 7 } });
  });
});

describe('what can be judged of a bad photo is judged', () => {
  test('half of the card outside: what is seen is judged, what is not is listed', () => {
    const photo = photographCard(own, { ...large, pixelsPerMm: 11, shift: [0.42, 0.1] }, seededRandom(6));
    const result = judgeCard(photo.picture, own);
    if (!result.ok) throw new Error(JSON.stringify(result.trouble));
    const { value } = result;
    expect(value.unseen.length).toBeGreaterThan(10);
    expect(scoreOf(own, photo, value).soundCalledMissing).toBe(0);
    expect(value.notes).toContainEqual({ kind: 'unseen', pins: value.unseen.length });
    for (const index of value.unseen) expect(value.pins[index]!.dx).toBeNull();
  });

  test('a flash photo from the front is judged, with a warning that dots may be drawn', () => {
    const photo = photographCard(own, { ...large, scene: 'front' }, seededRandom(6));
    const result = judgeCard(photo.picture, own);
    if (!result.ok) throw new Error(JSON.stringify(result.trouble));
    expect(result.value.fit.holes).toBe('dark');
    expect(result.value.notes).toContainEqual({ kind: 'dark-holes' });
    expect(scoreOf(own, photo, result.value).missingOverlooked).toBe(0);
  });

  test('of two cards one is judged and the other is mentioned', () => {
    const [left, right] = ([-0.25, 0.25] as const).map((shift, k) =>
      photographCard(
        own,
        { ...large, turn: 85 + 4 * k, pixelsPerMm: 9, shift: [shift, 0] },
        seededRandom(6 + k),
      ),
    );
    const both = pictureOf(large.width, large.height, (column, row) => {
      const { picture } = column < large.width / 2 ? left! : right!;
      return picture.grey[row * large.width + column]!;
    });
    const result = judgeCard(both, own);
    if (!result.ok) throw new Error(JSON.stringify(result.trouble));
    expect(result.value.notes.map(({ kind }) => kind)).toContain('other-holes');
    expect(result.value.missing.length).toBe(4);
  });

  test('a soft photo is judged but for oval holes, and a hopeless one is refused', () => {
    const soft = photographCard(own, { ...large, blur: 3.5 }, seededRandom(6));
    const result = judgeCard(soft.picture, own);
    if (!result.ok) throw new Error(JSON.stringify(result.trouble));
    expect(result.value.notes).toContainEqual({ kind: 'blurred' });
    expect(result.value.oval).toEqual([]);
    expect(scoreOf(own, soft, result.value).missingOverlooked).toBe(0);
    const hopeless = photographCard(own, { ...large, blur: 12 }, seededRandom(6));
    expect(judgeCard(hopeless.picture, own).ok).toBe(false);
  });
});

function pictureOf(
  width: number,
  height: number,
  grey: (column: number, row: number) => number,
): GreyPicture {
  const all = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) all[row * width + column] = grey(column, row);
  }
  return { width, height, grey: all };
}
