import { formatBoth } from '#base/units/format-length.ts';
import type { Arranged } from '../arrange/arrange.ts';
import type { ArrangingTrouble } from '../trouble.ts';
import { countInWords, numberInWords } from './number.ts';

/** Why a pattern cannot be arranged as asked, and what to do. */
export function arrangeTroubleInWords(trouble: ArrangingTrouble): string {
  switch (trouble.kind) {
    case 'units-differ':
      return 'One pattern is in millimetres and the other in pixels of a scan, so nobody knows how they fit together. Set the size of the one in pixels first, with "true --known".';
    case 'no-step':
      return 'The step from one repeat to the next is nought. Give --step, such as "0;40mm".';
    case 'no-repeat':
      return 'This pattern does not say how long a repeat is. Give --step, such as "0;40" for 40 mm down the sheet.';
    case 'no-footside':
      return 'An angle of the ground is to the footside, and this pattern names no straight run of pins as its footside.';
    case 'footside-turns':
      return 'This pattern has its footside on more sides than one, so that its ground cannot be brought to another angle as a whole. Change the strip that it was made from, and make the corners anew.';
    case 'no-ground-angle':
      return 'This pattern keeps no recipe that says at which angle its ground lies. Give both angles, such as --ground-angle 60:54.';
    case 'nothing-to-arrange':
      return 'Nothing was asked for. Say what to do: --mirror, --turn, --scale, --ground-angle, --repeat or --join.';
  }
}

/** What came of it, in a sentence or two. */
export function arrangedInWords({ pattern, width, height }: Arranged, hadRecipe: boolean): string[] {
  const { unit, pins, recipe } = pattern;
  const size =
    unit === 'mm'
      ? `${formatBoth(width)} across and ${formatBoth(height)} down`
      : `${numberInWords(width, 1)} by ${numberInWords(height, 1)} pixels`;
  return [
    `${countInWords(pins.length, 'pin')}, ${size}.`,
    ...(hadRecipe && !recipe
      ? [
          'Its recipe is left out: the pins no longer stand where it would put them. Keep the pattern it was made from, to draft that anew.',
        ]
      : []),
  ];
}
