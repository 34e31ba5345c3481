import type { LinearRgb } from './srgb.ts';

/** A colour as the eye orders it: lightness 0 to 100, green to red, blue to yellow (CIE 1976 L*a*b*). */
export interface Lab {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** sRGB light to CIELAB with the white point of sRGB itself, D65 (IEC 61966-2-1 and CIE 15). */
export function toLab({ red, green, blue }: LinearRgb): Lab {
  const x = bend((0.4123907993 * red + 0.3575843394 * green + 0.1804807884 * blue) / WHITE.x);
  const y = bend(0.2126390059 * red + 0.7151686788 * green + 0.0721923154 * blue);
  const z = bend((0.0193308187 * red + 0.1191947798 * green + 0.9505321522 * blue) / WHITE.z);
  return { l: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/** Chromaticity (0.3127, 0.3290), the D65 of sRGB, at luminance 1. */
const WHITE = { x: 0.3127 / 0.329, z: (1 - 0.3127 - 0.329) / 0.329 };

const bend = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
