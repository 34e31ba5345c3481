import { ciede2000 } from './ciede2000.ts';
import { contrast, LEAST_MARK_CONTRAST } from './contrast.ts';
import { type Film, underFilm } from './film.ts';
import { toLab } from './lab.ts';
import { type LinearRgb, parseHex } from './srgb.ts';

export const WHITE_PAPER: LinearRgb = { red: 1, green: 1, blue: 1 };
export const BLACK_INK: LinearRgb = { red: 0, green: 0, blue: 0 };

/**
 * Least difference (CIEDE2000) between a tint and the paper at which an area is told at a glance.
 * Our own choice, no source; an editable default.
 */
export const LEAST_TINT_DIFFERENCE = 10;

/** Contrast ratio (WCAG 2.2) of a line against what it is printed on, both seen through the film. */
export const lineContrast = (line: LinearRgb, ground: LinearRgb, film: Film): number =>
  contrast(underFilm(line, film), underFilm(ground, film));

/** Difference (CIEDE2000) of a tint from white paper, both seen through the film. */
export const tintDifference = (tint: LinearRgb, film: Film): number =>
  ciede2000(toLab(underFilm(tint, film)), toLab(underFilm(WHITE_PAPER, film)));

/** Whether a tint can be told from the paper, and black lines be read on it, through every one of the films. */
export const isTintVisible = (
  tint: LinearRgb,
  films: readonly Film[],
  leastDifference = LEAST_TINT_DIFFERENCE,
  leastContrast = LEAST_MARK_CONTRAST,
): boolean =>
  films.every(
    (film) =>
      tintDifference(tint, film) >= leastDifference && lineContrast(BLACK_INK, tint, film) >= leastContrast,
  );

/**
 * The tint nearest to the wanted one that stays visible through all the films. First more of the same ink is tried
 * (every further coat passes the same share of light again) and less of it (spread in dots, so that paper shows
 * between); a colour that neither saves gives way to the Okabe-Ito colour that then looks most like it. Null where even
 * that fails, which takes a film darker than any on sale.
 */
export function visibleTint(wanted: LinearRgb, films: readonly Film[]): LinearRgb | null {
  const visible = (tint: LinearRgb) => isTintVisible(tint, films);
  const looksAway = (tint: LinearRgb) => ciede2000(toLab(tint), toLab(wanted));
  const nearest = (tints: readonly LinearRgb[]) =>
    tints.filter(visible).sort((one, other) => looksAway(one) - looksAway(other))[0] ?? null;

  return visible(wanted)
    ? wanted
    : (nearest(inMoreOrLessInk(wanted)) ??
        nearest(OKABE_ITO.flatMap((hex) => inMoreOrLessInk(parseHex(hex)!))));
}

function inMoreOrLessInk(ink: LinearRgb): LinearRgb[] {
  const steps = Array.from({ length: 24 }, (_, step) => (step + 1) / 24);
  return [
    ...steps.map((share) => everyChannel(ink, (light) => 1 + share * (light - 1))),
    ...steps.map((share) => everyChannel(ink, (light) => light ** (1 + 7 * share))),
  ];
}

const everyChannel = ({ red, green, blue }: LinearRgb, change: (light: number) => number): LinearRgb => ({
  red: change(red),
  green: change(green),
  blue: change(blue),
});

/**
 * Colours that people with any kind of colour vision tell apart, without black and grey: M. Okabe and K. Ito, "Color
 * Universal Design" (2008), as R carries them in `palette.colors(palette = "Okabe-Ito")`.
 */
export const OKABE_ITO: readonly string[] = [
  '#e69f00',
  '#56b4e9',
  '#009e73',
  '#f0e442',
  '#0072b2',
  '#d55e00',
  '#cc79a7',
];
