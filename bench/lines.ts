/**
 * Working lines, gimps and warping on generated pages with known truth: how many lines are right and how many are found, and
 * what both cost as ratios to named peers of sharp (libvips) in the same run, on one thread: a Gaussian blur of the page
 * for the lines and gimps, an affine turn of the page with bilinear sampling for the warp.
 */
import sharp from 'sharp';
import { invert } from '#base/geometry/affine.ts';
import { warp } from '#base/picture/warp.ts';
import { seededRandom } from '#base/random.ts';
import { findGimps } from '#craft/trace/gimps.ts';
import { findLines } from '#craft/trace/lines.ts';
import { edging, fine, jitter, type KnownPattern, round, tape } from '../test/support/patterns/index.ts';
import { greyOf, renderScan, type ScanOptions, throughJpeg } from '../test/support/scan/index.ts';

const ROUNDS = 5;
sharp.concurrency(1);

const page = { width: 210, height: 297 };
const old = (known: KnownPattern): KnownPattern => jitter(known, 0.15, seededRandom(7));
const pages: readonly (readonly [string, KnownPattern, ScanOptions])[] = [
  ['edging, print, A4', edging({ spacing: 4, repeats: 10, width: 30 }), { page, skew: 1 }],
  ['edging, photocopy', edging({ angle: 57, spacing: 4 }), { style: 'photocopy', skew: 2.5, scaleX: 1.01 }],
  ['edging, old card', old(edging({ angle: 52 })), { style: 'card', skew: 2 }],
  [
    'fine, print, A4',
    fine({ repeats: 5, spacing: 2.2, width: 60, groundLines: 0.5 }),
    { page, dot: 0.5, line: 0.16 },
  ],
  [
    'fine, 600 dpi, grey film',
    fine({ seed: 5, groundLines: 0.5 }),
    { dpi: 600, dot: 0.45, line: 0.12, film: 'grey' },
  ],
  ['tape, blue film', tape(), { film: 'blue', line: 0.25 }],
  ['mat, photocopy', round(), { style: 'photocopy', dot: 0.5 }],
  ['mat, old print', old(round({ parts: 8, sectors: 48, rings: 14 })), { dot: 0.55 }],
];

console.log(
  'page                       pins   lines  precision  recall  blur       lines      x blur  gimps      x blur',
);
for (const [name, known, options] of pages) {
  const scan = await throughJpeg(renderScan(known, options, seededRandom(11)));
  const picture = greyOf(scan);
  const holes = scan.truth.holes.map(({ column, row, diameter }) => ({
    column,
    row,
    diameter: (diameter * scan.truth.dpi) / 25.4,
  }));
  const truth = new Set(scan.truth.lines.map(([a, b]) => keyOf(a, b)));
  // A plait is drawn as two lines close together, and may be told as one.
  const plaits = plaitsOf(known);
  const found = findLines(picture, holes).filter(({ from, to }) => !plaits.has(keyOf(from, to)));
  const right = found.filter(({ from, to }) => truth.has(keyOf(from, to))).length;
  const raw = { width: picture.width, height: picture.height, channels: 1 as const };
  const blur = await fastest(() => sharp(picture.grey, { raw }).blur(2).raw().toBuffer());
  const lines = await fastest(() => findLines(picture, holes));
  const gimps = await fastest(() => findGimps(picture, holes));
  console.log(
    [
      name.padEnd(26),
      String(holes.length).padEnd(6),
      String(truth.size).padEnd(6),
      (right / found.length).toFixed(3).padEnd(10),
      (right / truth.size).toFixed(3).padEnd(7),
      `${blur.toFixed(0)} ms`.padEnd(10),
      `${lines.toFixed(0)} ms`.padEnd(10),
      (lines / blur).toFixed(2).padEnd(7),
      `${gimps.toFixed(0)} ms`.padEnd(10),
      (gimps / blur).toFixed(2),
    ].join(' '),
  );
}

const known = old(edging({ spacing: 4, repeats: 10, width: 30 }));
const scan = renderScan(known, { page, skew: 1 }, seededRandom(3));
const { width, height, rgb } = scan;
const toSheet = invert(scan.truth.toPixels);
const controls = scan.truth.holes.map((from, k) => ({ from, to: known.ideal[k]! }));
const corner = { x: known.ideal[0]!.x - 40, y: known.ideal[0]!.y - 20 };
const box = { left: corner.x, top: corner.y, right: corner.x + 210, bottom: corner.y + 297 };
const raw = { width, height, channels: 3 as const };
const turned = [0.9998, -0.0175, 0.0175, 0.9998] as [number, number, number, number];
const turn = await fastest(() =>
  sharp(rgb, { raw }).affine(turned, { interpolator: sharp.interpolators.bilinear }).raw().toBuffer(),
);
const warped = await fastest(() =>
  warp({ width, height, channels: 3, bytes: rgb }, controls, toSheet, { box, dpi: 300 }),
);
const size = `${((width * height) / 1e6).toFixed(1)} megapixels in colour, ${controls.length} pins`;
console.log(
  `\nwarp: ${size}: ${warped.toFixed(0)} ms, ${(warped / turn).toFixed(2)} x an affine turn (${turn.toFixed(0)} ms)`,
);

/** Processor time of the fastest round, ms: other programs on the machine count for little. */
async function fastest(work: () => unknown): Promise<number> {
  let best = Infinity;
  for (let round = 0; round < ROUNDS; round++) {
    const start = process.cpuUsage();
    await work();
    const { user, system } = process.cpuUsage(start);
    best = Math.min(best, (user + system) / 1000);
  }
  return best;
}

function keyOf(a: number, b: number): string {
  return `${Math.min(a, b)} ${Math.max(a, b)}`;
}

function plaitsOf({ pattern }: KnownPattern): Set<string> {
  const index = new Map(pattern.pins.map((pin, k) => [pin.id, k]));
  return new Set(
    pattern.marks.flatMap((mark) => {
      if (mark.kind !== 'plait') return [];
      const path = mark.path.map((anchor) => ('pin' in anchor ? index.get(anchor.pin)! : -1));
      return path.slice(1).map((b, k) => keyOf(path[k]!, b));
    }),
  );
}
