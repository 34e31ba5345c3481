import { chord } from '#base/fit/polar.ts';
import type { MatRecipe } from '#pattern/recipe/mat.ts';
import type { StripRecipe } from '#pattern/recipe/strip.ts';
import { type Bend, bendOf, radiusOfChord } from '../ring/bend.ts';

/** One round of a mat: the strip that it is bent from, and how. */
export interface Round {
  /** Where its figures stand in the recipe: 'rounds.1' or 'outer'. */
  readonly figure: string;
  /** Goes before the ids of its records. */
  readonly prefix: string;
  readonly strip: StripRecipe;
  /** Pins of its inner edge. */
  readonly pins: number;
  readonly bend: Bend;
}

/** The rounds of a mat from the centre outward. Repeats that do not divide a round are cut off: check them first. */
export function roundsOfMat(recipe: MatRecipe): Round[] {
  const { spacing, sectors, angle, rounds, outer } = recipe;
  const found: Round[] = [];
  let pins = sectors;
  let radius = radiusOfChord(spacing, (2 * Math.PI) / sectors);
  let isTurned = false;
  const add = (figure: string, prefix: string, parts: RoundParts): number => {
    const apart = chord(radius, pins);
    const { picots: _, band: __, ...figures } = parts;
    const repeats = Math.floor(pins / parts.length);
    const strip: StripRecipe = {
      footside: { kind: 'plain' },
      headside: { kind: 'straight' },
      ...figures,
      kind: 'strip',
      spacing: apart,
      angle,
      repeats,
    };
    const bend = shifted(
      bendOf({ spacing: apart, spacings: pins, arc: 2 * Math.PI, foot: 'inside' }),
      isTurned ? apart / 2 : 0,
    );
    found.push({ figure, prefix, strip, pins, bend });
    return (Math.PI / pins) * Math.tan((angle * Math.PI) / 180);
  };
  rounds.forEach((round, k) => {
    const growth = add(`rounds.${k}`, `r${k + 1}.`, round);
    const columns = round.width + round.band.width;
    radius *= Math.exp(growth * columns);
    // The lattice goes on beyond the band, its places turned by half a sector in every second ring.
    isTurned = !round.band.doubled && isTurned !== (columns % 2 === 1);
    if (round.band.doubled) pins *= 2;
  });
  add('outer', 'o.', outer);
  return found;
}

type RoundParts = Omit<MatRecipe['outer'], 'headside' | 'picots'> &
  Partial<MatRecipe['outer']> & { readonly band?: unknown };

const shifted = (bend: Bend, along: number): Bend => ({
  ...bend,
  place: ({ x, y }) => bend.place({ x, y: y + along }),
});
