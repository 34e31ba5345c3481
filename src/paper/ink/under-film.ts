import { type Film, noFilm, underFilm } from '#base/colour/film.ts';
import { parseHex, toHex } from '#base/colour/srgb.ts';
import type { Colour, InkMark } from '../drawing/mark.ts';
import { tintUnder } from './tints.ts';

/** A printed colour as it is seen through the film. */
export const colourUnder = (colour: Colour, film: Film): Colour =>
  toHex(underFilm(parseHex(colour)!, film)) as Colour;

/**
 * A pattern's own mark as it will look once it is printed for the film and lies under it: tints are printed so that
 * they are still seen.
 */
export function markUnder(mark: InkMark, film: Film): InkMark {
  if (mark.kind === 'image' || film === noFilm) return mark;
  const isTint = mark.kind === 'fill' && mark.role === 'tint';
  return { ...mark, colour: seen(mark.colour, film, isTint) };
}

const known = new Map<Film, Map<string, Colour>>();

/** Kept, since a sheet has thousands of marks in a handful of colours. */
function seen(colour: Colour, film: Film, isTint: boolean): Colour {
  let colours = known.get(film);
  if (!colours) {
    colours = new Map();
    known.set(film, colours);
  }
  const key = `${colour} ${isTint}`;
  const found = colours.get(key) ?? colourUnder(isTint ? tintUnder(colour, film) : colour, film);
  colours.set(key, found);
  return found;
}
