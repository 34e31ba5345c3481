/**
 * A cutting beam takes away a strip as wide as the kerf, half of it on either side of the line that it follows: an
 * opening comes out one kerf larger than drawn, and a piece one kerf smaller (worked example of a laser-cutting service,
 * snijlab.nl, kerf 0.2 mm: drawn 2.0 x 4.0 gives an opening of 2.2 x 4.2 and a piece of 1.8 x 3.8). All in mm.
 */

/** What to draw for an opening of `wanted`; 0, a mere point, where the kerf alone is as wide or wider. */
export const drawnForOpening = (wanted: number, kerf: number): number => {
  const drawn = wanted - kerf;
  return drawn > NOISE ? drawn : 0;
};

/** What to draw for a piece of `wanted`. */
export const drawnForPiece = (wanted: number, kerf: number): number => wanted + kerf;

/** How large the opening along a drawn line comes out. */
export const openingOf = (drawn: number, kerf: number): number => drawn + kerf;

/** How large the piece within a drawn line comes out. */
export const pieceOf = (drawn: number, kerf: number): number => Math.max(0, drawn - kerf);

/** Far below a kerf, far above the noise of sums of decimal fractions. */
const NOISE = 1e-9;
