import { formatMm } from '#base/units/format-length.ts';
import type { RepeatTrouble } from '#craft/size/repeats.ts';
import type { SizeTrouble } from '../trouble.ts';
import { listInWords, numberInWords } from './number.ts';

type AnySizeTrouble = SizeTrouble | RepeatTrouble;

/** What to do next, by what stopped: as far as the doors differ in it. */
export type SizeAdvice = Readonly<
  Record<Exclude<AnySizeTrouble['kind'], 'size-absurd' | 'repeats-over-limit'>, string>
> & { readonly limit: (percent: string) => string };

const byCommand: SizeAdvice = {
  'size-scale-unknown': 'with "true --known" or "trace --dpi"',
  'size-no-spacing': 'give it as --spacing 4mm',
  'size-no-repeat': 'give it as --repeat 24mm',
  'size-no-thread': 'Give --thread "NeL 80/2" --fibre linen, --wraps 28/cm or --threads with your list',
  'corners-too-long': 'give the corners as --corner 20mm',
  limit: (percent) => `Give --limit ${percent} if you want it all the same`,
};

/** Why a size cannot be found, and what to do next. */
export function sizeTroubleInWords(trouble: AnySizeTrouble, advice: SizeAdvice = byCommand): string {
  switch (trouble.kind) {
    case 'size-scale-unknown':
      return `Nobody knows how large this pattern is, so no other size can be reckoned from it. Set its size first ${advice[trouble.kind]}.`;
    case 'size-no-spacing':
      return `The pattern does not say how far its footside pins stand apart. Measure from the first pin to the eleventh, take a tenth, and ${advice[trouble.kind]}.`;
    case 'size-no-repeat':
      return `The pattern does not say how long its repeat is, and none was found. Measure it along the footside, from a pin to the same pin of the next repeat, and ${advice[trouble.kind]}.`;
    case 'size-no-thread':
      return `No thread was given to suit. ${advice[trouble.kind]}.`;
    case 'size-absurd':
      return `That would make the pattern ${percent(trouble.factor)} of its size, and only ${percent(trouble.least)} to ${percent(trouble.most)} is taken. Look whether mm and inches are what you mean.`;
    case 'corners-too-long':
      return `The corners take ${formatMm(trouble.corners)} of a side that is only ${formatMm(trouble.length)} long. Take a longer side, or ${advice[trouble.kind]}.`;
    case 'repeats-over-limit': {
      const { nearest, limit } = trouble;
      const repeats = listInWords(nearest.counts.map(String));
      return `No whole number of repeats fits within ${percent(limit)}. The nearest is ${repeats}, which ${
        nearest.way === 'scale'
          ? `makes the pattern ${percent(nearest.scale)} of its size`
          : `eases ${listInWords(nearest.ease.map((mm) => formatMm(mm, 1)))}`
      }. ${advice.limit(`${Math.ceil(nearest.cost * 1000) / 10}%`)}, or another length.`;
    }
  }
}

const percent = (share: number): string => `${numberInWords(share * 100, 1)} %`;
