import type { LinearRgb } from './srgb.ts';

/** Translucent self-adhesive film, as stuck over a printed pattern to protect it and to lower the glare. */
export interface Film {
  readonly name: string;
  /** Share of the light that comes back through the film from white paper, a channel. */
  readonly passes: LinearRgb;
  /** Share of the light, 0 to 1, that the matt surface throws back as a white veil before it reaches the print. */
  readonly veil: number;
}

/**
 * How a printed colour looks through the film. Our own simple model, in linear light: what the surface scatters lies
 * over everything as a veil; the rest goes through the film, to the paper and back, and loses a fixed share a channel.
 */
export function underFilm(colour: LinearRgb, { passes, veil }: Film): LinearRgb {
  const seen = (print: number, share: number) => veil + (1 - veil) * share * print;
  return {
    red: seen(colour.red, passes.red),
    green: seen(colour.green, passes.green),
    blue: seen(colour.blue, passes.blue),
  };
}

/** No film: the print as it is. */
export const noFilm: Film = { name: 'none', passes: { red: 1, green: 1, blue: 1 }, veil: 0 };

/**
 * The two colours of film in use. That they are blue and grey is common practice, no source; how much light they
 * pass and scatter is our estimate, no source, and meant to be changed to suit the roll at hand.
 */
export const blueFilm: Film = { name: 'blue', passes: { red: 0.42, green: 0.62, blue: 0.84 }, veil: 0.05 };
export const greyFilm: Film = { name: 'grey', passes: { red: 0.52, green: 0.53, blue: 0.55 }, veil: 0.06 };
