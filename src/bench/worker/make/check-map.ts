import type { GreyPicture } from '#base/picture/grey.ts';
import type { Judgement } from '#craft/light/judgement.ts';
import { type CheckSheetsWish, checkSheets } from '#jobs/light/sheets.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { openFonts } from '../fonts.ts';

export type MapWish = Omit<CheckSheetsWish, 'typeface'>;

/** The sheets of a checked card as a PDF. */
export async function checkPdf(
  pattern: Pattern,
  photo: GreyPicture,
  judgement: Judgement,
  wish: MapWish,
): Promise<Uint8Array> {
  const typeface = await openFonts();
  const sheets = checkSheets(pattern, photo, judgement, { ...wish, typeface });
  return sheetsToPdf(sheets, typeface, pattern.about.name ?? 'Lace pattern', null);
}
