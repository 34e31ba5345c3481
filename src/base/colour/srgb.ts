/** A colour as amounts of red, green and blue light, each 0 to 1, proportional to the light's power. */
export interface LinearRgb {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/**
 * Reads '#rrggbb' or '#rgb' (CSS Color 4, section 5.2), in either case, as sRGB. Null for anything else:
 * names and transparency mean nothing on paper.
 */
export function parseHex(text: string): LinearRgb | null {
  const digits = HEX.exec(text)?.[1];
  if (digits === undefined) return null;
  const wide = digits.length === 3 ? digits.replace(/./g, '$&$&') : digits;
  const channel = (at: number) => toLinear(Number.parseInt(wide.slice(at, at + 2), 16) / 255);
  return { red: channel(0), green: channel(2), blue: channel(4) };
}

/** The nearest '#rrggbb', in small letters; light outside 0 to 1 is cut off. */
export const toHex = ({ red, green, blue }: LinearRgb): string => `#${byte(red)}${byte(green)}${byte(blue)}`;

const HEX = /^#([0-9a-f]{6}|[0-9a-f]{3})$/i;

const byte = (light: number): string =>
  Math.round(255 * toSignal(Math.min(1, Math.max(0, light))))
    .toString(16)
    .padStart(2, '0');

/** IEC 61966-2-1, the decoding curve of sRGB. */
export const toLinear = (signal: number): number =>
  signal <= 0.04045 ? signal / 12.92 : ((signal + 0.055) / 1.055) ** 2.4;

/** The other way round, light to signal. */
export const toSignal = (light: number): number =>
  light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
