import { zlibSync } from 'fflate';
import type { Picture } from '../drawing/mark.ts';

/** Rows of grey or RGB bytes as a PNG file (W3C PNG, third edition): 8 bits a sample, no filter, no interlace. */
export function encodePng({
  width,
  height,
  channels,
  bytes,
}: Extract<Picture, { form: 'raster' }>): Uint8Array {
  const header = new Uint8Array(13);
  const view = new DataView(header.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  header[8] = 8;
  header[9] = channels === 1 ? 0 : 2;
  const stride = width * channels;
  const rows = new Uint8Array((stride + 1) * height);
  for (let row = 0; row < height; row++) {
    rows.set(bytes.subarray(row * stride, (row + 1) * stride), row * (stride + 1) + 1);
  }
  const chunks = [
    SIGNATURE,
    chunk('IHDR', header),
    chunk('IDAT', zlibSync(rows)),
    chunk('IEND', new Uint8Array(0)),
  ];
  const file = new Uint8Array(chunks.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of chunks) {
    file.set(part, at);
    at += part.length;
  }
  return file;
}

const SIGNATURE = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

function chunk(type: string, data: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(data.length + 12);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  for (let k = 0; k < 4; k++) bytes[4 + k] = type.charCodeAt(k);
  bytes.set(data, 8);
  view.setUint32(data.length + 8, crc32(bytes.subarray(4, data.length + 8)));
  return bytes;
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

/** The CRC of ISO 3309, as PNG's annex D gives it. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = CRC_TABLE[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
