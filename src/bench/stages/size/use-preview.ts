import { useEffect, useMemo } from 'react';
import { joinBoxes } from '#base/geometry/box.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { boxOfPattern } from '#pattern/pins.ts';
import { useSheet } from '../../sheet/handle.ts';
import { useTool } from '../../sheet/use-tool.ts';
import { SizeTool } from './size-tool.ts';

/** Shows the pattern at its new size, with a frame as large as it is now round the place where it stands. */
export function usePreview(pattern: Pattern, preview: Pattern | null): void {
  const sheet = useSheet();
  const tool = useMemo(() => new SizeTool(), []);
  useTool(tool);
  useEffect(() => {
    sheet.setDress({ instead: preview });
    const now = boxOfPattern(pattern);
    if (preview) {
      const then = boxOfPattern(preview);
      tool.show({ now, then });
      sheet.zoomTo(joinBoxes(now, then));
    } else tool.show(null);
    sheet.redraw();
  }, [sheet, tool, pattern, preview]);
  useEffect(() => () => sheet.setDress({}), [sheet]);
  const isShown = preview !== null;
  useEffect(() => {
    if (isShown) return () => sheet.showWhole();
  }, [sheet, isShown]);
}
