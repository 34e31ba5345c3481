import { describe, expect, test } from 'vitest';
import type { PixelPicture } from '#base/picture/warp.ts';
import { whitenGround } from '#base/picture/whiten.ts';
import { normal, seededRandom } from '#base/random.ts';

const SIDE = 256;

/** A page of one colour, darker by up to a fifth towards the right, with a stroke of ink and a tinted square. */
function page(paper: readonly number[], ink: readonly number[], tint: readonly number[]): PixelPicture {
  const random = seededRandom(11);
  const bytes = new Uint8Array(SIDE * SIDE * paper.length);
  for (let at = 0; at < SIDE * SIDE; at++) {
    const column = at % SIDE;
    const row = (at - column) / SIDE;
    const isInk = row >= 60 && row < 64;
    const isTint = row >= 140 && row < 230 && column >= 20 && column < 120;
    const colour = isInk ? ink : isTint ? tint : paper;
    const light = 1 - (0.2 * column) / SIDE;
    for (const [channel, value] of colour.entries()) {
      bytes[at * paper.length + channel] = value * light + normal(random);
    }
  }
  return { width: SIDE, height: SIDE, channels: paper.length === 1 ? 1 : 3, bytes };
}

const meanOf = (picture: PixelPicture, left: number, top: number, width: number, height: number): number[] =>
  Array.from({ length: picture.channels }, (_, channel) => {
    let sum = 0;
    for (let row = top; row < top + height; row++) {
      for (let column = left; column < left + width; column++) {
        sum += picture.bytes[(row * picture.width + column) * picture.channels + channel]!;
      }
    }
    return sum / (width * height);
  });

describe('the ground of a scan made white', () => {
  test('yellowed, unevenly lit paper becomes white everywhere, and black ink stays dark', () => {
    const white = whitenGround(page([235, 225, 200], [40, 40, 42], [235, 225, 200]));
    for (const [left, top] of [
      [4, 4],
      [120, 100],
      [230, 230],
    ]) {
      for (const mean of meanOf(white, left!, top!, 20, 20)) expect(mean).toBeGreaterThan(252);
    }
    for (const mean of meanOf(white, 10, 61, 230, 2)) expect(mean).toBeLessThan(70);
  });

  test('ink without colour gives a picture in grey, whatever the colour of the paper', () => {
    expect(whitenGround(page([120, 180, 230], [25, 38, 48], [120, 180, 230])).channels).toBe(1);
  });

  test('a tint keeps its colour', () => {
    const white = whitenGround(page([240, 240, 236], [30, 30, 30], [205, 160, 215]));
    expect(white.channels).toBe(3);
    const [red, green, blue] = meanOf(white, 40, 160, 60, 50);
    expect(green!).toBeLessThan(0.85 * red!);
    expect(green!).toBeLessThan(0.85 * blue!);
  });

  test('a grey picture stays grey and keeps its size', () => {
    const { width, height, channels } = whitenGround(page([220], [30], [220]));
    expect({ width, height, channels }).toEqual({ width: SIDE, height: SIDE, channels: 1 });
  });
});
