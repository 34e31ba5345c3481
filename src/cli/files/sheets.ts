import type { Sheet } from '#paper/sheet/sheet.ts';
import { writeSvg } from '#paper/svg/write.ts';
import type { Typeface } from '#paper/type/typeface.ts';
import { sheetToPng } from './raster.ts';

/** The files that sheets make: one PDF, or as the name's ending wants it an SVG or PNG file a sheet. */
export async function sheetFiles(
  sheets: readonly Sheet[],
  output: string,
  dpi: number,
  typeface: Typeface,
  pdf: () => Promise<Uint8Array>,
): Promise<[name: string, content: Uint8Array | string][]> {
  const ending = /\.(svg|png)$/i.exec(output)?.[0];
  if (ending === undefined) return [[output, await pdf()]];
  const bare = output.slice(0, -ending.length);
  const files: [string, Uint8Array | string][] = [];
  for (const sheet of sheets) {
    const name = sheets.length === 1 ? output : `${bare}-${sheet.id}${ending}`;
    const isSvg = ending.toLowerCase() === '.svg';
    files.push([name, isSvg ? writeSvg(sheet, typeface) : await sheetToPng(sheet, typeface, dpi)]);
  }
  return files;
}
