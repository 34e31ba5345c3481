import type { GreyPicture } from '#base/picture/grey.ts';
import type { Progress } from '#base/progress.ts';
import { failed, type Result } from '#base/result.ts';
import { judgeCard } from '#craft/light/judge.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { CheckTrouble } from '../trouble.ts';

/**
 * Checks a photo of a pricked card against its pattern. The card's thickness, from which a needle's lean is told, is the
 * given one or the pattern's own.
 */
export function checkCard(
  pattern: Pattern,
  photo: GreyPicture,
  cardThickness: number | null,
  progress: Progress,
): Result<Judgement, CheckTrouble> {
  if (pattern.unit !== 'mm') return failed({ kind: 'light-scale-unknown' });
  const thickness = cardThickness ?? pattern.sizes.cardThickness;
  return judgeCard(photo, pattern.pins, {
    progress,
    ...(thickness !== undefined && { cardThickness: thickness }),
  });
}
