import sharp from 'sharp';
import { MM_PER_INCH } from '#base/units/length.ts';
import type { Sheet } from '#paper/sheet/sheet.ts';
import { writeSvg } from '#paper/svg/write.ts';
import type { Typeface } from '#paper/type/typeface.ts';

/** A sheet as PNG at so many dots an inch, which the file states (pHYs), so that it prints true to scale as well. */
export async function sheetToPng(sheet: Sheet, typeface: Typeface, dpi: number): Promise<Uint8Array> {
  const svg = Buffer.from(writeSvg(sheet, typeface));
  const width = Math.round((sheet.paper.width / MM_PER_INCH) * dpi);
  const height = Math.round((sheet.paper.height / MM_PER_INCH) * dpi);
  const picture = await sharp(svg, { density: dpi, limitInputPixels: false, unlimited: true })
    .resize(width, height, { fit: 'fill' })
    .flatten({ background: '#ffffff' })
    .withMetadata({ density: dpi })
    .png({ compressionLevel: 9, palette: false })
    .toBuffer();
  return new Uint8Array(picture);
}
