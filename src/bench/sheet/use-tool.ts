import { useEffect } from 'react';
import { useSheet } from './handle.ts';
import type { SheetTool } from './tool.ts';

/** Gives the sheet to a stage's tool while its panel is open. `tool` is one object for as long as the panel is. */
export function useTool(tool: SheetTool): void {
  const sheet = useSheet();
  useEffect(() => {
    sheet.setTool(tool);
    return () => sheet.setTool(null);
  }, [sheet, tool]);
}
