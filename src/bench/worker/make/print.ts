import type { Progress } from '#base/progress.ts';
import { done, type Result } from '#base/result.ts';
import { blankUnderDots, paperUnderDots } from '#jobs/print/paper-picture.ts';
import { sheetsToPdf } from '#jobs/print/pdf.ts';
import { type PrintPlan, planPrint } from '#jobs/print/plan.ts';
import { type PrintWish, printPattern } from '#jobs/print/print.ts';
import type { Trouble } from '#jobs/trouble.ts';
import { noCorrection } from '#paper/calibrate/correction.ts';
import type { PrinterProfile } from '#paper/calibrate/profile.ts';
import type { PrintOptions, PrintTrouble } from '#paper/sheet/options.ts';
import type { Pattern } from '#pattern/pattern.ts';
import { openFonts } from '../fonts.ts';
import { readPixels } from '../pictures/pixels.ts';

/** What is to be printed, and how. */
export interface PrintRequest {
  readonly pattern: Pattern;
  readonly wish: Omit<PrintWish, 'typeface' | 'picture' | 'correction' | 'inkSpread' | 'regularity'>;
  readonly printer: PrinterProfile | null;
  /** The picture of the paper, where its markings are to lie under the dots in place of drawn ones. */
  readonly paperPicture: Blob | null;
}

export interface PrintMade {
  readonly pdf: Uint8Array;
  readonly sheets: number;
  readonly notes: readonly string[];
}

export async function planSheetsOf(request: PrintRequest): Promise<Result<PrintPlan, PrintTrouble>> {
  const { pattern, paperPicture } = request;
  return planPrint(pattern, await wishOf(request, paperPicture && blankUnderDots(pattern)));
}

export async function printPdf(
  request: PrintRequest,
  progress: Progress,
): Promise<Result<PrintMade, Trouble>> {
  const { pattern, printer, paperPicture } = request;
  let under: PrintOptions['picture'] | null = null;
  if (paperPicture) {
    const pixels = await readPixels(new Uint8Array(await paperPicture.arrayBuffer()));
    if (!pixels.ok) return pixels;
    under = paperUnderDots(pattern, pixels.value, progress);
  }
  const wish = await wishOf(request, under);
  const printed = printPattern(pattern, wish, progress);
  if (!printed.ok) return printed;
  const { sheets, notes } = printed.value;
  const title = pattern.about.name ?? 'Lace pattern';
  const pdf = await sheetsToPdf(sheets, wish.typeface, title, pattern, printer ?? noCorrection);
  return done({ pdf, sheets: sheets.length, notes });
}

async function wishOf(
  { wish, printer }: PrintRequest,
  picture: PrintOptions['picture'] | null,
): Promise<PrintWish> {
  return {
    typeface: await openFonts(),
    ...wish,
    ...(printer && { correction: { x: printer.x, y: printer.y }, inkSpread: printer.inkSpread }),
    ...(picture && { picture }),
  };
}
