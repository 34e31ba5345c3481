import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { writePattern } from '#pattern/file/write.ts';
import { jpegOf } from '../scan/index.ts';
import { drafted } from './drafted.ts';
import { rosehip } from './rosehip.ts';
import { rosehipCard, rosehipPattern } from './rosehip-card.ts';

/** Writes every example into the given folder. */
export async function make(folder: string): Promise<void> {
  writeFileSync(join(folder, 'rosehip-edging.jpg'), await jpegOf(rosehip().scan, 84));
  writeFileSync(join(folder, 'rosehip-edging.json'), writePattern(rosehipPattern()));
  const { grey, width, height } = rosehipCard().picture;
  const photo = sharp(grey, { raw: { width, height, channels: 1 } });
  writeFileSync(join(folder, 'rosehip-card.jpg'), await photo.jpeg({ quality: 84 }).toBuffer());

  const own = join(folder, 'drafted');
  rmSync(own, { recursive: true, force: true });
  mkdirSync(own);
  for (const { entry, pattern } of drafted()) {
    writeFileSync(join(own, `${entry.name}.json`), writePattern(pattern));
  }
}
