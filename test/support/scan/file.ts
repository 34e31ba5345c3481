import sharp from 'sharp';
import type { Scan } from './scan.ts';

type Bytes = Pick<Scan, 'rgb' | 'width' | 'height'> & { readonly truth: { readonly dpi: number } };

/** The scan as a JPEG file that says its resolution. */
export function jpegOf({ rgb, width, height, truth }: Bytes, quality = 82): Promise<Buffer> {
  return sharp(rgb, { raw: { width, height, channels: 3 } })
    .withMetadata({ density: truth.dpi })
    .jpeg({ quality })
    .toBuffer();
}

/** What is left of the scan after a trip through a JPEG file. */
export async function throughJpeg<Kind extends Bytes>(scan: Kind, quality = 82): Promise<Kind> {
  const { data } = await sharp(await jpegOf(scan, quality))
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { ...scan, rgb: new Uint8Array(data) };
}
