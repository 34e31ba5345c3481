import { formatInches, formatMm } from '#base/units/format-length.ts';
import { type ClothHand, clothOf, latticeCloth } from '#craft/size/cloth.ts';
import { type LaceKind, wrapsInGap } from '#craft/size/grid.ts';
import type { Thread } from '#craft/size/thread.ts';
import type { ClothPatch, ClothPictures } from '#paper/sheet/size/cloth-sheet.ts';
import type { Sizing } from '../size/size.ts';
import { numberInWords } from '../words/number.ts';
import { percentInWords } from '../words/size.ts';

/** The thread in cloth stitch where it is rather thin, right and rather thick for the lace. */
export function clothPictures(thread: Thread, spacing: number, { wish, pattern }: Sizing): ClothPictures {
  const tan = Math.tan((groundAngle(pattern?.recipe, wish.lace) * Math.PI) / 180);
  const patch = ({ title, of }: (typeof PATCHES)[number]): ClothPatch => {
    const wide = (spacing * wish.wraps * of) / wrapsInGap(thread, spacing);
    const cloth = clothOf(latticeCloth((wide / 2) * tan, wide / 2), thread);
    return {
      title,
      cloth: {
        passives: { apart: 1 / cloth.passivesPerMm, diameter: thread.wrapped },
        workers: { apart: 1 / cloth.workersPerMm, diameter: thread.wrapped },
      },
      words: [
        `the pattern at ${percentInWords(wide / spacing)}`,
        `footside ${formatMm(wide)} (${formatInches(wide)})`,
        `threads hide ${numberInWords(cloth.cover.whole * 100, 0)} % of the ground`,
        ...(cloth.hand in TOO_CLOSE ? [TOO_CLOSE[cloth.hand]!] : []),
      ],
    };
  };
  return {
    thread: [
      `${thread.name}: ${thread.fibre}, ${formatMm(thread.wrapped, 3)} thick${
        thread.wrapsFrom === 'measured'
          ? ' by the wraps that were counted.'
          : ' as its number lets one expect.'
      }`,
    ],
    patches: PATCHES.map(patch),
  };
}

/** As far to either side as a thread can still be worked. */
const PATCHES = [
  { title: 'Open', of: 1.2 },
  { title: 'Just right', of: 1 },
  { title: 'Full', of: 0.8 },
] as const;

const TOO_CLOSE: Readonly<Partial<Record<ClothHand, string>>> = {
  crowded: 'the threads touch',
  impossible: 'there is no room for so many',
};

/** Degrees to the footside: the recipe's, else what is usual for the lace (point grounds: common practice, from memory). */
const groundAngle = (recipe: { readonly angle?: number } | object | undefined, lace: LaceKind): number =>
  recipe && 'angle' in recipe && typeof recipe.angle === 'number'
    ? recipe.angle
    : lace === 'point-ground'
      ? 60
      : 45;
