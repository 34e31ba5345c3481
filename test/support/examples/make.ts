import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { jpegOf } from '../scan/index.ts';
import { rosehip } from './rosehip.ts';

/** Writes every example into the given folder. */
export async function make(folder: string): Promise<void> {
  writeFileSync(join(folder, 'rosehip-edging.jpg'), await jpegOf(rosehip().scan, 84));
}
