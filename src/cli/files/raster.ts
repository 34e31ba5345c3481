import sharp from 'sharp';
import type { Sheet } from '#paper/sheet/sheet.ts';
import { writeSvgForPixels } from '#paper/svg/write.ts';
import type { Typeface } from '#paper/type/typeface.ts';

/** A sheet as PNG at so many dots an inch, which the file states (pHYs), so that it prints true to scale as well. */
export async function sheetToPng(sheet: Sheet, typeface: Typeface, dpi: number): Promise<Uint8Array> {
  const svg = Buffer.from(writeSvgForPixels(sheet, typeface, dpi));
  const picture = await sharp(svg, { limitInputPixels: false, unlimited: true })
    .flatten({ background: '#ffffff' })
    .withMetadata({ density: dpi })
    .png({ compressionLevel: 9, palette: false })
    .toBuffer();
  return new Uint8Array(picture);
}
