import { type Film, underFilm } from '#base/colour/film.ts';
import { parseHex, toHex } from '#base/colour/srgb.ts';
import type { Picture } from '../drawing/mark.ts';

type Raster = Extract<Picture, { form: 'raster' }>;

/** The picture as it is seen through the film. Film acts on each channel alone, so 256 values a channel say it all. */
export function pictureUnderFilm({ width, height, channels, bytes }: Raster, film: Film): Raster {
  const seen = seenValues(film);
  const pixels = new Uint8Array(width * height * 3);
  for (let pixel = 0; pixel < width * height; pixel++) {
    for (let channel = 0; channel < 3; channel++) {
      const value = bytes[pixel * channels + (channels === 1 ? 0 : channel)]!;
      pixels[pixel * 3 + channel] = seen[channel]![value]!;
    }
  }
  return { form: 'raster', width, height, channels: 3, bytes: pixels };
}

/** For red, green and blue: what each of the 256 values becomes. */
export function seenValues(film: Film): readonly Uint8Array[] {
  const values = [new Uint8Array(256), new Uint8Array(256), new Uint8Array(256)];
  for (let value = 0; value < 256; value++) {
    const grey = `#${value.toString(16).padStart(2, '0').repeat(3)}`;
    const seen = toHex(underFilm(parseHex(grey)!, film));
    values.forEach((channel, k) => {
      channel[value] = Number.parseInt(seen.slice(1 + 2 * k, 3 + 2 * k), 16);
    });
  }
  return values;
}
