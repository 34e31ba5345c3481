import { expect, test } from 'vitest';
import { blueFilm, greyFilm, noFilm } from '#base/colour/film.ts';
import { parseHex } from '#base/colour/srgb.ts';
import { isTintVisible } from '#base/colour/visible.ts';
import type { InkMark } from '#paper/drawing/mark.ts';
import { rectangle } from '#paper/drawing/path.ts';
import { tintUnder } from '#paper/ink/tints.ts';
import { colourUnder, markUnder } from '#paper/ink/under-film.ts';
import { seenValues } from '#paper/sheet/film-picture.ts';

const fill = (role: 'tint' | 'marking', colour: `#${string}`): InkMark => ({
  kind: 'fill',
  role,
  path: rectangle({ left: 0, top: 0, right: 1, bottom: 1 }),
  colour,
});

test('a mark is what is seen of its colour; a tint, of the one that is printed for the film', () => {
  const pale = '#fdf6ff';
  expect(isTintVisible(parseHex(pale)!, [blueFilm])).toBe(false);
  for (const film of [blueFilm, greyFilm]) {
    expect(markUnder(fill('marking', pale), film)).toEqual(fill('marking', colourUnder(pale, film)));
    expect(markUnder(fill('tint', pale), film)).toEqual(
      fill('tint', colourUnder(tintUnder(pale, film), film)),
    );
    expect(colourUnder('#ffffff', film)).not.toBe('#ffffff');
  }
  expect(markUnder(fill('tint', pale), noFilm)).toEqual(fill('tint', pale));
});

test('a picture and a mark of the same colour look the same under film', () => {
  const values = seenValues(blueFilm);
  for (const [red, green, blue] of [
    [0, 0, 0],
    [255, 255, 255],
    [179, 182, 200],
  ] as const) {
    const hex = (channels: readonly number[]) =>
      `#${channels.map((value) => value.toString(16).padStart(2, '0')).join('')}` as const;
    const seen = [values[0]![red]!, values[1]![green]!, values[2]![blue]!];
    expect(colourUnder(hex([red, green, blue]), blueFilm)).toBe(hex(seen));
  }
});
