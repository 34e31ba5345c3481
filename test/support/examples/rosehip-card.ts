import { seededRandom } from '#base/random.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { type CardPhoto, photographCard } from '../card/index.ts';
import { drafted } from './rosehip.ts';

/** The pattern that the card of the example was pricked from, `examples/rosehip-edging.json`. */
export const rosehipPattern = (): Pattern => ({
  ...drafted().pattern,
  about: {
    name: 'Rosehip edging',
    maker: 'the Pinlight project',
    source: 'an invented pattern',
    permission: 'MIT licence: use it freely',
  },
  sizes: { pin: 0.55, cardThickness: 0.4 },
});

/** The card held against a window, turned and a little tilted, with a dozen faults: `examples/rosehip-card.jpg`. */
export function rosehipCard(): CardPhoto {
  return photographCard(
    rosehipPattern().pins,
    {
      width: 1500,
      height: 2600,
      pixelsPerMm: 12,
      turn: 6,
      tilt: 9,
      tiltTowards: 30,
      k1: -0.02,
      scene: 'window',
      thickness: 0.4,
      faults: { missing: 3, offCentre: 4, oval: 4, extra: 1 },
    },
    seededRandom(1903),
  );
}
