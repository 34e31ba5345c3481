/**
 * Finding the dots: time, agreement with the truth and memory on generated pages, side by side with the blob detector
 * of OpenCV (Debian package python3-opencv) on the same pixels in the same run, both on one thread.
 *
 * `npm run bench -- trace` uses generated pages; `npm run bench -- trace FOLDER` also the scans of a folder that have
 * a truth beside them: NAME.jpg and NAME.truth.json with `dpi`, `mm_to_px` and `pins`.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import type { GreyPicture } from '#base/picture/grey.ts';
import { findHoles, type TracedHole } from '#craft/trace/holes.ts';
import { scoreHoles } from '../test/support/score.ts';
import { drawScan } from '../test/support/trace-scans.ts';
import { drawWholePage } from '../test/support/whole-page.ts';
import { blobDetector } from './peers/trace.ts';

const ROUNDS = 3;
const MATCH_MM = 0.35;
const SEEDS = Array.from({ length: 24 }, (_, k) => 301 + k);

interface Page {
  readonly name: string;
  readonly picture: GreyPicture;
  readonly dpi: number;
  readonly truth: readonly { readonly column: number; readonly row: number; readonly hidden: boolean }[];
}

const folder = process.argv[2];
const scratch = mkdtempSync(join(tmpdir(), 'pinlight-bench-'));
const peer = blobDetector();
if (!peer) console.log('No OpenCV here (Debian package python3-opencv): its columns stay empty.');

console.log(`${'page'.padEnd(44)}   MP  pins    F1   rms mm  low/false     ms | blob F1    ms  ratio`);
const total = { right: 0, false: 0, missed: 0, low: 0, squares: 0, worst: 1 };
for (const seed of SEEDS) await measure(await generated(seed));
report('generated pages');
if (folder) {
  Object.assign(total, { right: 0, false: 0, missed: 0, low: 0, squares: 0, worst: 1 });
  for (const file of readdirSync(folder).sort()) {
    if (/^scan-.*\.truth\.json$/.test(file)) await measure(await scanned(join(folder, file)));
  }
  report(folder);
}
console.log('\nWhole A4 pages:');
for (const dpi of [300, 600]) await measure({ name: `A4 at ${dpi} dpi`, dpi, ...(await drawWholePage(dpi)) });
rmSync(scratch, { recursive: true });

async function generated(seed: number): Promise<Page> {
  const { name, picture, truth } = await drawScan(seed);
  return { name, picture, dpi: truth.dpi, truth: truth.holes };
}

async function scanned(truthFile: string): Promise<Page> {
  const truth = JSON.parse(readFileSync(truthFile, 'utf8')) as {
    dpi: number;
    pins: { x_px: number; y_px: number; drawn: boolean; hidden: boolean }[];
  };
  const decoded = sharp(truthFile.replace('.truth.json', '.jpg')).rotate().greyscale().raw();
  const { data, info } = await decoded.toBuffer({ resolveWithObject: true });
  return {
    name: truthFile.replace(/^.*\/|\.truth\.json$/g, ''),
    picture: { width: info.width, height: info.height, grey: new Uint8Array(data) },
    dpi: truth.dpi,
    truth: truth.pins
      .filter(({ drawn }) => drawn)
      .map(({ x_px, y_px, hidden }) => ({ column: x_px, row: y_px, hidden })),
  };
}

async function measure({ name, picture, dpi, truth }: Page): Promise<void> {
  const reach = (MATCH_MM / 25.4) * dpi;
  let dot = 0;
  let best = Infinity;
  let holes: readonly TracedHole[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const start = performance.now();
    ({ holes, dotDiameter: dot } = findHoles(picture, { dpi }));
    best = Math.min(best, performance.now() - start);
  }
  const score = scoreHoles(holes, truth, reach);
  const low = holes.filter((hole, at) => score.verdicts[at] === false && hole.confidence < 0.5).length;
  total.right += score.right;
  total.false += score.false;
  total.missed += score.missed;
  total.low += low;
  total.squares += score.right * ((score.rms * 25.4) / dpi) ** 2;
  total.worst = Math.min(total.worst, score.f1);
  const raw = join(scratch, 'page.raw');
  writeFileSync(raw, picture.grey);
  const blobs = peer?.(raw, picture, dot, ROUNDS);
  const beside = blobs
    ? `${scoreHoles(blobs.places, truth, reach).f1.toFixed(3)} ${blobs.ms.toFixed(0).padStart(6)}  ${(best / blobs.ms).toFixed(2)}`
    : '';
  console.log(
    [
      name.slice(0, 44).padEnd(44),
      ((picture.width * picture.height) / 1e6).toFixed(1).padStart(4),
      String(truth.length).padStart(5),
      score.f1.toFixed(4),
      ((score.rms * 25.4) / dpi).toFixed(4),
      `${low}/${score.false}`.padStart(9),
      best.toFixed(0).padStart(6),
      `| ${beside}`,
    ].join('  '),
  );
}

function report(name: string): void {
  const { right, missed } = total;
  const f1 = (2 * right) / (2 * right + total.false + missed);
  const rms = Math.sqrt(total.squares / right);
  console.log(
    `${name}: pooled F1 ${f1.toFixed(4)}, lowest ${total.worst.toFixed(4)}, centres ${rms.toFixed(4)} mm RMS, ` +
      `${total.low} of ${total.false} false ones under confidence 0.5; most memory so far ` +
      `${Math.round(process.resourceUsage().maxRSS / 1024)} MB`,
  );
}
