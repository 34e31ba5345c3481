import type { PaperSize } from '#base/units/paper.ts';
import { type Block, flow } from './flow.ts';
import { furniture, roomOn } from './furniture.ts';
import type { Sheet, SheetContext, SheetKind } from './sheet.ts';

/** A sheet that still waits to be told which of how many it is. */
export type Unnumbered = (number: number, total: number) => Sheet;

export interface Reading {
  readonly kind: SheetKind;
  readonly title: string;
  readonly advice: string;
  readonly paper: PaperSize;
  /** What stands for the page's place where there is only one. */
  readonly page?: string;
}

/** As many sheets as the blocks fill, with the furniture of all sheets. */
export function readingSheets(
  context: SheetContext,
  reading: Reading,
  blocks: readonly Block[],
): Unnumbered[] {
  const pages = flow(blocks, roomOn(context, reading.paper));
  return pages.map((marks, k) => (number, total) => {
    const id = pages.length > 1 ? `${reading.kind}-${k + 1}` : reading.kind;
    const frame = furniture(context, {
      ...reading,
      id,
      label: `${number} of ${total}`,
      page: pages.length > 1 ? `page ${k + 1} of ${pages.length}` : (reading.page ?? 'one page'),
    });
    return {
      kind: reading.kind,
      id,
      title: reading.title,
      paper: reading.paper,
      marks: [...frame.marks, ...marks],
    };
  });
}

/** Sheets that are a job of their own, numbered among themselves. */
export const numbered = (sheets: readonly Unnumbered[]): Sheet[] =>
  sheets.map((sheet, k) => sheet(k + 1, sheets.length));
