import type { Lab } from './lab.ts';

/**
 * How different two colours look, by CIEDE2000 with all three weights 1: about 1 is the least that can be seen side by
 * side, 10 is seen at a glance. Symbols and numbers in brackets are those of G. Sharma, W. Wu and E. N. Dalal,
 * "The CIEDE2000 color-difference formula", Color Research and Application 30 (2005) 21-30.
 */
export function ciede2000(one: Lab, other: Lab): number {
  const stretch = 1 + greyStretch((Math.hypot(one.a, one.b) + Math.hypot(other.a, other.b)) / 2); // (3)-(5)
  const c1 = Math.hypot(stretch * one.a, one.b); // (6)
  const c2 = Math.hypot(stretch * other.a, other.b);
  const h1 = hue(stretch * one.a, one.b); // (7)
  const h2 = hue(stretch * other.a, other.b);

  const hueStep = c1 * c2 === 0 ? 0 : shortWay(h2 - h1); // (10)
  const deltaL = other.l - one.l; // (8)
  const deltaC = c2 - c1; // (9)
  const deltaH = 2 * Math.sqrt(c1 * c2) * sine(hueStep / 2); // (11)

  const meanL = (one.l + other.l) / 2; // (12)
  const meanC = (c1 + c2) / 2; // (13)
  const meanH = c1 * c2 === 0 ? h1 + h2 : meanHue(h1, h2); // (14)

  const t =
    1 -
    0.17 * cosine(meanH - 30) +
    0.24 * cosine(2 * meanH) +
    0.32 * cosine(3 * meanH + 6) -
    0.2 * cosine(4 * meanH - 63); // (15)
  const turn = 30 * Math.exp(-(((meanH - 275) / 25) ** 2)); // (16)
  const rc = 2 * seventh(meanC); // (17)
  const sl = 1 + (0.015 * (meanL - 50) ** 2) / Math.sqrt(20 + (meanL - 50) ** 2); // (18)
  const sc = 1 + 0.045 * meanC; // (19)
  const sh = 1 + 0.015 * meanC * t; // (20)
  const rt = -sine(2 * turn) * rc; // (21)

  const [l, c, h] = [deltaL / sl, deltaC / sc, deltaH / sh];
  return Math.sqrt(l * l + c * c + h * h + rt * c * h); // (22)
}

const seventh = (c: number): number => Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7));

const greyStretch = (meanC: number): number => 0.5 * (1 - seventh(meanC));

const sine = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);

const cosine = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);

/** In degrees, 0 to 360; 0 for grey. */
function hue(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const angle = (Math.atan2(b, a) * 180) / Math.PI;
  return angle < 0 ? angle + 360 : angle;
}

const shortWay = (step: number): number => (step > 180 ? step - 360 : step < -180 ? step + 360 : step);

function meanHue(h1: number, h2: number): number {
  const sum = h1 + h2;
  if (Math.abs(h1 - h2) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}
