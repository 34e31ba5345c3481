import { useEffect } from 'react';
import type { Pattern } from '#pattern/pattern.ts';
import { useSheet } from '../../sheet/handle.ts';
import type { BeforeAfterView } from './BeforeAndAfter.tsx';

/** Shows the pattern as it was or as it would be; on the way from one to the other the tool draws the pins. */
export function useDress(before: Pattern, after: Pattern, { share, paper }: BeforeAfterView): void {
  const sheet = useSheet();
  const atEnd = share === 0 || share === 1;
  const instead = share === 0 ? null : after;
  useEffect(() => {
    sheet.setDress({ paper, pins: atEnd, instead });
  }, [sheet, paper, atEnd, instead]);
  useEffect(() => () => sheet.setDress({}), [sheet]);
  const unit = (instead ?? before).unit;
  // Pixels that become millimetres are another size altogether.
  const changesUnit = before.unit !== after.unit;
  useEffect(() => {
    if (!changesUnit || !unit) return;
    sheet.showWhole();
    return () => sheet.showWhole();
  }, [sheet, changesUnit, unit]);
}
