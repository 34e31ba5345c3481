import { blueFilm, type Film, greyFilm, noFilm } from '#base/colour/film.ts';
import { parseHex, toHex } from '#base/colour/srgb.ts';
import { visibleTint } from '#base/colour/visible.ts';
import type { Area, Stitch } from '#pattern/pattern.ts';
import type { Colour } from '../drawing/mark.ts';

/** The films by the name that a person gives them. */
export const films = { none: noFilm, blue: blueFilm, grey: greyFilm } as const satisfies Record<string, Film>;

export type FilmName = keyof typeof films;

/**
 * Tints by stitch where the pattern names none: light shades of the colours that trade schools use for stitches
 * (purple cloth stitch, green half stitch, red whole stitch: from memory, meant to be changed).
 */
export const stitchTints: Readonly<Partial<Record<Stitch, Colour>>> = {
  cloth: '#d3b8e6',
  half: '#b5dcae',
  whole: '#f0b7b1',
  filling: '#f2e0a6',
};

/** What stitches are called on sheets. */
export const stitchNames: Readonly<Record<Stitch, string>> = {
  cloth: 'cloth stitch',
  half: 'half stitch',
  whole: 'whole stitch',
  ground: 'ground',
  filling: 'filling',
  other: 'other stitch',
};

/** The tint an area asks for, or its stitch's own, or none. */
export function wantedTint(area: Area): Colour | undefined {
  const given = area.tint === undefined ? null : parseHex(area.tint);
  if (given) return toHex(given) as Colour;
  return area.stitch && stitchTints[area.stitch];
}

/** The nearest tint to the wanted one that is still seen under the film; the wanted one where no film hides it. */
export function tintUnder(wanted: Colour, film: Film): Colour {
  const colour = visibleTint(parseHex(wanted)!, [film]);
  return colour ? (toHex(colour) as Colour) : wanted;
}
