import type { PaperSize } from '#base/units/paper.ts';
import { sheetToTry } from '#jobs/calibrate/calibrate.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { noCorrection } from '#paper/calibrate/correction.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import { openFonts } from '../fonts.ts';

/** One sheet with nothing but the two rulers, as a PDF. */
export async function testSheetPdf(paper: PaperSize, printer: PrinterProfile | null): Promise<Uint8Array> {
  const typeface = await openFonts();
  const sheets = sheetToTry(typeface, paper, printer);
  return sheetsToPdf(sheets, typeface, sheets[0]!.title, null, printer ?? noCorrection);
}
