import { spawnSync } from 'node:child_process';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';

/** Finds blobs in a raw grey file; the time is that of the detector alone, the best of `rounds`. */
export type Peer = (
  file: string,
  size: Pick<GreyPicture, 'width' | 'height'>,
  dpi: number,
  rounds: number,
) => { readonly places: readonly PixelPoint[]; readonly ms: number };

/** Sizes and shapes as somebody would set them who knows that the marks are dots of 0.35 to 1 mm. */
const SCRIPT = `
import sys, time, json, numpy, cv2
cv2.setNumThreads(1)
name, width, height, dpi, rounds = sys.argv[1], *map(int, sys.argv[2:4]), float(sys.argv[4]), int(sys.argv[5])
page = numpy.fromfile(name, dtype=numpy.uint8).reshape(height, width)
p = cv2.SimpleBlobDetector_Params()
mm = dpi / 25.4
p.minThreshold, p.maxThreshold, p.thresholdStep = 40, 200, 10
p.minRepeatability = 2
p.minDistBetweenBlobs = 0.5 * mm
p.filterByColor, p.blobColor = True, 0
p.filterByArea, p.minArea, p.maxArea = True, 0.6 * (0.35 * mm) ** 2, 1.1 * (1.0 * mm) ** 2
p.filterByCircularity, p.minCircularity = True, 0.6
p.filterByConvexity, p.minConvexity = True, 0.75
p.filterByInertia, p.minInertiaRatio = True, 0.3
detector = cv2.SimpleBlobDetector_create(p)
# dots on lines come apart from them when the lines are opened away
kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (max(3, int(0.42 * mm) | 1),) * 2)
best = 1e9
for _ in range(rounds):
    start = time.perf_counter()
    found = detector.detect(cv2.morphologyEx(page, cv2.MORPH_CLOSE, kernel))
    best = min(best, time.perf_counter() - start)
print(json.dumps({'places': [{'column': k.pt[0], 'row': k.pt[1]} for k in found], 'ms': best * 1000}))
`;

/** The blob detector of OpenCV, or null where Debian's python3-opencv is not installed. */
export function blobDetector(): Peer | null {
  const python = '/usr/bin/python3';
  if (spawnSync(python, ['-c', 'import cv2, numpy']).status !== 0) return null;
  return (file, { width, height }, dpi, rounds) => {
    const args = ['-c', SCRIPT, file, String(width), String(height), String(dpi), String(rounds)];
    const run = spawnSync(python, args, { encoding: 'utf8', maxBuffer: 64e6 });
    if (run.status !== 0) throw new Error(run.stderr);
    return JSON.parse(run.stdout);
  };
}
