import { noCorrection, type PrinterCorrection } from '#paper/calibrate/correction.ts';
import { writePdf } from '#paper/pdf/write.ts';
import type { Sheet } from '#paper/sheet/sheet.ts';
import type { Typeface } from '#paper/type/typeface.ts';
import { encodeUtf8 } from '#pattern/container/utf8.ts';
import { writePattern } from '#pattern/file/write.ts';
import type { Pattern } from '#pattern/pattern.ts';

/** Sheets as one PDF, put right for a printer that was measured. The pattern itself travels inside, where one is given. */
export function sheetsToPdf(
  sheets: readonly Sheet[],
  typeface: Typeface,
  title: string,
  pattern: Pattern | null,
  correction: PrinterCorrection = noCorrection,
): Promise<Uint8Array> {
  const { maker, source } = pattern?.about ?? {};
  return writePdf(sheets, {
    typeface,
    correction,
    meta: { title, ...(maker && { author: maker }), ...(source && { subject: source }) },
    attachments: pattern === null ? [] : [attachmentOf(pattern)],
  });
}

function attachmentOf(pattern: Pattern) {
  // The picture of the paper stays in the pattern's own file.
  const { paper: _, ...alone } = pattern;
  return {
    name: 'pattern.json',
    type: 'application/json',
    description: 'The pattern from which these sheets were printed',
    bytes: encodeUtf8(writePattern(alone)),
  };
}
