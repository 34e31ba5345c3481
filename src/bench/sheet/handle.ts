import { createContext, use } from 'react';
import type { Box } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { FilmName } from '#paper/ink/tints.ts';
import type { Pattern } from '#pattern/pattern.ts';
import type { PaperUnder } from './paper-under.ts';
import type { SheetTool } from './tool.ts';

/** What lies under and over the pins while a stage shows it. */
export interface SheetDress {
  /** How strongly the paper's picture shows, 0 to 1. */
  readonly paper?: number;
  /** Whether marks and tints are drawn. */
  readonly markings?: boolean;
  /** Whether pins are drawn; not where the stage's tool draws them itself. */
  readonly pins?: boolean;
  /** What lies over the sheet, which then looks as it will when it is printed for it. */
  readonly film?: FilmName;
  /** A pattern to show in place of the open one, such as a preview. */
  readonly instead?: Pattern | null;
  /** A picture to show in place of the paper's, such as a photo of the card. Whoever gives it puts it away. */
  readonly photo?: PaperUnder | null;
}

/** The sheet as stages reach it. */
export interface SheetHandle {
  setTool(tool: SheetTool | null): void;
  setDress(dress: SheetDress): void;
  /** Draws the overlay again. */
  redraw(): void;
  zoomTo(box: Box): void;
  showWhole(): void;
  zoomBy(factor: number): void;
  /** Where the keyboard's cursor is, in the pattern's unit. */
  cursor(): Point;
}

export const SheetContext = createContext<SheetHandle | null>(null);

export function useSheet(): SheetHandle {
  const sheet = use(SheetContext);
  if (!sheet) throw new Error('useSheet: there is no sheet here');
  return sheet;
}
