import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import type { PaperSize } from '#base/units/paper.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { sizePattern } from '#jobs/size/size.ts';
import type { SizeWish } from '#jobs/size/wish.ts';
import { sizeSheets, TABLE_TITLE, USUAL_SCALES } from '#jobs/threads/table.ts';
import type { Trouble } from '#jobs/trouble.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { openFonts } from '../fonts.ts';

/** Which thread at which size, and how the best of them covers, as a PDF. */
export async function sizeTablePdf(
  pattern: Pattern,
  wish: SizeWish,
  paper: PaperSize,
  progress: Progress,
): Promise<Result<Uint8Array, Trouble>> {
  const sizing = sizePattern(pattern, wish, progress);
  if (!sizing.ok) return sizing;
  const typeface = await openFonts();
  const sheets = sizeSheets(sizing.value, { typeface, paper, scales: USUAL_SCALES });
  return sheets.ok ? done(await sheetsToPdf(sheets.value, typeface, TABLE_TITLE, null)) : sheets;
}
