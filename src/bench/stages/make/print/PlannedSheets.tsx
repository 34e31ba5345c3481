import { useEffect, useMemo } from 'react';
import { Button } from 'react-aria-components';
import { joinBoxes } from '#base/geometry/box.ts';
import type { PrintPlan } from '#jobs/print/plan.ts';
import { Fold } from '../../../parts/Fold.tsx';
import { useSheet } from '../../../sheet/handle.ts';
import { useTool } from '../../../sheet/use-tool.ts';
import { SheetsTool } from './sheets-tool.ts';

/** The sheets to come, over the pattern on the sheet in the middle and as a list. */
export function PlannedSheets({ plan }: { readonly plan: PrintPlan }) {
  const sheet = useSheet();
  const tool = useMemo(() => new SheetsTool(), []);
  useTool(tool);
  const whole = plan.sheets.map(({ window }) => window).reduce(joinBoxes);
  const place = `${whole.left} ${whole.top} ${whole.right} ${whole.bottom}`;
  useEffect(() => {
    tool.update(plan);
    sheet.redraw();
  }, [tool, sheet, plan]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the view moves when the sheets lie otherwise, and not at every new plan.
  useEffect(() => sheet.zoomTo(whole), [sheet, place]);
  if (plan.sheets.length === 1) return null;
  return (
    <Fold label="The sheets one by one">
      <ul className="places">
        {plan.sheets.map(({ name, window, holes }) => (
          <li key={name}>
            <Button onPress={() => sheet.zoomTo(window)}>
              <strong>{name}</strong>{' '}
              {holes === 0 ? 'blank, skip' : holes === 1 ? '1 hole' : `${holes} holes`}
            </Button>
          </li>
        ))}
      </ul>
    </Fold>
  );
}
