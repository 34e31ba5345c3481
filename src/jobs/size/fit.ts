import { done, failed, type Result } from '#base/result.ts';
import {
  type RepeatChoice,
  type RepeatTrouble,
  roundRoller,
  type Stretch,
  wholeRepeats,
} from '#craft/size/repeats.ts';
import type { FitTarget } from './wish.ts';

/** How a pattern was made to fit, and what else would have done. */
export interface Fitted {
  readonly target: FitTarget;
  readonly stretches: readonly Stretch[];
  readonly chosen: RepeatChoice;
  readonly choices: readonly RepeatChoice[];
}

/** Whole repeats of `repeat` mm for a place; `card` is the thickness of the pricking that goes round a roller, mm. */
export function fitPlace(repeat: number, card: number, target: FitTarget): Result<Fitted, RepeatTrouble> {
  const { corners, way, repeats, limit } = target;
  const cornered = 'mm' in corners ? corners.mm : corners.repeats * repeat;
  const stretches = stretchesOf(target, card, cornered);
  const options = {
    limit,
    ...(way && { ways: [way] as const }),
    ...(repeats !== null && { count: repeats }),
  };
  const fitted = wholeRepeats(repeat, stretches, options);
  if (!fitted.ok) return failed(fitted.trouble);
  return done({ target, stretches, chosen: fitted.value.best, choices: fitted.value.choices });
}

function stretchesOf({ place }: FitTarget, card: number, corners: number): Stretch[] {
  switch (place.kind) {
    case 'length':
      return [{ length: place.length, corners }];
    case 'roller':
      return [{ length: roundRoller(place.circumference, card), corners: 0 }];
    case 'round':
      return [{ length: Math.PI * place.diameter, corners: 0 }];
    case 'cloth':
      return [place.width, ...(place.width === place.height ? [] : [place.height])].map((length) => ({
        length,
        corners,
      }));
  }
}
