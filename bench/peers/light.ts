import { opencvPeer, type Peer } from './opencv.ts';

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

/** The blob detector of OpenCV, or null where it is not installed. */
export const lightBlobDetector = (): Peer | null => opencvPeer(SCRIPT);
