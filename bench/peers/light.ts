import { spawnSync } from 'node:child_process';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';

/** Finds blobs in a raw grey file; the time is that of the detector alone on one thread, the best of `rounds`. */
export type LightPeer = (
  file: string,
  size: Pick<GreyPicture, 'width' | 'height'>,
  pixelsPerMm: number,
  rounds: number,
) => { readonly places: readonly PixelPoint[]; readonly ms: number };

/** Set as somebody would who knows that the holes are light, and 0.35 to 1 mm wide at this scale. */
const SCRIPT = `
import sys, time, json, numpy, cv2
cv2.setNumThreads(1)
name, width, height, mm, rounds = sys.argv[1], *map(int, sys.argv[2:4]), float(sys.argv[4]), int(sys.argv[5])
page = numpy.fromfile(name, dtype=numpy.uint8).reshape(height, width)
p = cv2.SimpleBlobDetector_Params()
p.minThreshold, p.maxThreshold, p.thresholdStep = 80, 230, 25
p.minRepeatability = 2
p.minDistBetweenBlobs = 0.5 * mm
p.filterByColor, p.blobColor = True, 255
p.filterByArea, p.minArea, p.maxArea = True, 0.6 * (0.35 * mm) ** 2, 1.1 * (1.0 * mm) ** 2
p.filterByCircularity, p.minCircularity = True, 0.5
p.filterByConvexity, p.minConvexity = True, 0.75
p.filterByInertia, p.minInertiaRatio = True, 0.2
detector = cv2.SimpleBlobDetector_create(p)
best = 1e9
for _ in range(rounds):
    start = time.perf_counter()
    found = detector.detect(page)
    best = min(best, time.perf_counter() - start)
print(json.dumps({'places': [{'column': k.pt[0], 'row': k.pt[1]} for k in found], 'ms': best * 1000}))
`;

/** The blob detector of OpenCV, or null where Debian's python3-opencv is not installed. */
export function lightBlobDetector(): LightPeer | null {
  const python = '/usr/bin/python3';
  if (spawnSync(python, ['-c', 'import cv2, numpy']).status !== 0) return null;
  return (file, { width, height }, pixelsPerMm, rounds) => {
    const args = ['-c', SCRIPT, file, String(width), String(height), String(pixelsPerMm), String(rounds)];
    const run = spawnSync(python, args, { encoding: 'utf8', maxBuffer: 64e6 });
    if (run.status !== 0) throw new Error(run.stderr);
    return JSON.parse(run.stdout);
  };
}
