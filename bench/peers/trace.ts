import { opencvPeer, type Peer } from './opencv.ts';

/**
 * Tuned over many settings on scans of patterns for the best mean agreement, and told the size of the page's dots: thin
 * lines are closed over first (dots on lines are no blobs otherwise), thresholds are shares of the paper's grey.
 */
const SCRIPT = `
import sys, time, json, numpy, cv2
cv2.setNumThreads(1)
name, width, height, dot, rounds = sys.argv[1], *map(int, sys.argv[2:4]), float(sys.argv[4]), int(sys.argv[5])
page = numpy.fromfile(name, dtype=numpy.uint8).reshape(height, width)
paper = float(numpy.median(page[::4, ::4]))
p = cv2.SimpleBlobDetector_Params()
p.minThreshold, p.maxThreshold, p.thresholdStep = 0.2 * paper, 0.7 * paper, paper / 16
p.minRepeatability = 2
p.minDistBetweenBlobs = 0.9 * dot
p.filterByColor, p.blobColor = True, 0
p.filterByArea, p.minArea, p.maxArea = True, 0.25 * dot ** 2, 1.6 * dot ** 2
p.filterByCircularity, p.minCircularity = True, 0.5
p.filterByConvexity, p.minConvexity = True, 0.7
p.filterByInertia, p.minInertiaRatio = True, 0.4
detector = cv2.SimpleBlobDetector_create(p)
kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (max(1, round(0.62 * dot)),) * 2)
best = 1e9
for _ in range(rounds):
    start = time.perf_counter()
    found = detector.detect(cv2.morphologyEx(page, cv2.MORPH_CLOSE, kernel))
    best = min(best, time.perf_counter() - start)
print(json.dumps({'places': [{'column': k.pt[0], 'row': k.pt[1]} for k in found], 'ms': best * 1000}))
`;

/** The blob detector of OpenCV, or null where it is not installed. */
export const blobDetector = (): Peer | null => opencvPeer(SCRIPT);
