// Makes the pictures of the icon that devices want beside the drawing: run it after src/bench/public/icon.svg changed.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const folder = fileURLToPath(new URL('../src/bench/public/', import.meta.url));

/** Names and sizes; a maskable one and a home screen's are cut to shape by the device, so theirs reach to the corners. */
export const icons = [
  { file: 'icon-192.png', size: 192, toCorners: false },
  { file: 'icon-512.png', size: 512, toCorners: false },
  { file: 'icon-maskable-512.png', size: 512, toCorners: true },
  { file: 'icon-home-180.png', size: 180, toCorners: true },
];

/** @param {{ size: number, toCorners: boolean }} icon @returns {Promise<Buffer>} the PNG */
export function drawIcon({ size, toCorners }) {
  const drawing = readFileSync(`${folder}icon.svg`, 'utf8');
  const shape = toCorners ? drawing.replace(' rx="12"', '') : drawing;
  return sharp(Buffer.from(shape), { density: (72 * size) / 64 })
    .resize(size, size)
    .png({ compressionLevel: 9 })
    .toBuffer();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const icon of icons) writeFileSync(folder + icon.file, await drawIcon(icon));
}
