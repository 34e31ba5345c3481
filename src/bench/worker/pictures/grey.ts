import { relativeLuminance } from '#base/colour/contrast.ts';
import { toLinear, toSignal } from '#base/colour/srgb.ts';

/** Steps of light between black and white: fine enough that the darkest greys keep apart. */
const STEPS = 65_535;

const lightOf = Float64Array.from({ length: 256 }, (_, signal) => toLinear(signal / 255) * STEPS);
const red = lightOf.map((light) => relativeLuminance({ red: light, green: 0, blue: 0 }));
const green = lightOf.map((light) => relativeLuminance({ red: 0, green: light, blue: 0 }));
const blue = lightOf.map((light) => relativeLuminance({ red: 0, green: 0, blue: light }));
const signalOf = Uint8Array.from({ length: STEPS + 1 }, (_, light) =>
  Math.round(255 * toSignal(light / STEPS)),
);

/**
 * Writes the grey of pixels of red, green, blue and alpha from `at` on: as light as the colour is, by the luminance of
 * sRGB light.
 */
export function writeGrey(grey: Uint8Array, at: number, rgba: Uint8ClampedArray): void {
  for (let from = 0, to = at; from < rgba.length; from += 4, to++) {
    grey[to] = signalOf[(red[rgba[from]!]! + green[rgba[from + 1]!]! + blue[rgba[from + 2]!]! + 0.5) | 0]!;
  }
}
