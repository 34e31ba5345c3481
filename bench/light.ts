/**
 * A card judged against the light, on seeded photos of 12 megapixels: time and memory of the whole judgement, how many of the
 * faults it finds, and the same photos given to a general-purpose blob detector (OpenCV's, on one thread), which only finds
 * spots and knows no pattern. Times are the best of several rounds of the decoded photo.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { toPixel } from '#base/fit/camera.ts';
import type { PixelPoint } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { inverted } from '#base/picture/inverted.ts';
import { seededRandom } from '#base/random.ts';
import { judgeCard } from '#craft/light/judge.ts';
import { findSpots } from '#craft/light/spots.ts';
import { type CardPhoto, photographCard, scoreOf } from '../test/support/card/index.ts';
import { edging, fine, round, tape } from '../test/support/patterns/index.ts';
import { lightBlobDetector } from './peers/light.ts';

const ROUNDS = 5;
const photos = [
  { name: 'edging, window', known: edging({ repeats: 4 }), scene: 'window', seed: 1 },
  { name: 'fine, light box', known: fine({ repeats: 2, seed: 2 }), scene: 'lightbox', seed: 2 },
  { name: 'tape, lamp', known: tape({ repeats: 2 }), scene: 'lamp', seed: 3 },
  { name: 'round, light box', known: round({ innerRadius: 12 }), scene: 'lightbox', seed: 4 },
] as const;

const peer = lightBlobDetector();
if (peer === null)
  console.log('python3-opencv (Debian) is not here: no blob detector to hold this against.\n');
const folder = mkdtempSync(join(tmpdir(), 'pinlight-bench-'));
console.log(
  'photo             holes   judged    of it spots   F1      place error   memory   | blob detector   time    seen by us / by it   stray by it',
);
try {
  for (const { name, known, scene, seed } of photos) {
    const { pins } = known.pattern;
    const view = { width: 4000, height: 3000, turn: 35 * seed, tilt: 6, tiltTowards: 80 * seed, blur: 1.2 };
    const photo = photographCard(pins, { ...view, scene, mirrored: seed % 2 === 0 }, seededRandom(seed));
    const ms = fastest(() => judgeCard(photo.picture, pins));
    const spotMs = fastest(() => findSpots(inverted(photo.picture)));
    const memory = memoryOf(() => judgeCard(photo.picture, pins));
    const result = judgeCard(photo.picture, pins);
    if (!result.ok) throw new Error(`${name}: ${result.trouble.kind}`);
    const { f1, placeError } = scoreOf(pins, photo, result.value);
    const ours = findSpots(inverted(photo.picture)).spots;
    const cells = [
      name.padEnd(17),
      String(holesOf(photo).length).padEnd(7),
      `${ms.toFixed(0)} ms`.padEnd(9),
      `${spotMs.toFixed(0)} ms`.padEnd(13),
      f1.toFixed(3).padEnd(7),
      `${(1000 * placeError).toFixed(1)} um`.padEnd(13),
      `${(memory / 2 ** 20).toFixed(0)} MB`.padEnd(8),
    ];
    if (peer !== null) {
      const file = join(folder, 'photo.raw');
      writeFileSync(file, photo.picture.grey);
      const found = peer(file, photo.picture, result.value.fit.pixelsPerMm, ROUNDS);
      const own = seen(photo, ours);
      const other = seen(photo, found.places);
      cells.push(
        '|',
        `${found.ms.toFixed(0)} ms`.padEnd(15),
        `x ${(found.ms / ms).toFixed(1)}`.padEnd(7),
        `${own.found} / ${other.found}`.padEnd(20),
        String(other.stray),
      );
    }
    console.log(cells.join(' '));
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function holesOf({ card, camera }: CardPhoto): PixelPoint[] {
  return [...card.holes, ...card.extra].flatMap((hole) => (hole === null ? [] : [toPixel(camera, hole)]));
}

/** Holes that have a spot within a third of their width, and spots that are no hole's. */
function seen(photo: CardPhoto, places: readonly PixelPoint[]): { found: number; stray: number } {
  const points = places.map(({ column, row }) => ({ x: column, y: row }));
  const index = new PointIndex(points);
  const used = new Set<number>();
  for (const { column, row } of holesOf(photo)) {
    const nearest = index.nearest({ x: column, y: row }, 4);
    if (nearest !== null) used.add(nearest);
  }
  return { found: used.size, stray: places.length - used.size };
}

/** Bytes that a piece of work holds at its end beyond what was there before, garbage included. */
function memoryOf(work: () => unknown): number {
  const { gc } = globalThis as { gc?: () => void };
  // buffers go with the second sweep
  gc?.();
  gc?.();
  const before = process.memoryUsage();
  work();
  const after = process.memoryUsage();
  return (
    after.heapUsed +
    after.external +
    after.arrayBuffers -
    before.heapUsed -
    before.external -
    before.arrayBuffers
  );
}

function fastest(work: () => unknown): number {
  const times = Array.from({ length: ROUNDS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return Math.min(...times);
}
