export { jpegOf, throughJpeg } from './file.ts';
export type { ScanOptions, ScanStyle } from './options.ts';
export { greyOf, pixelOf, renderScan, type Scan, type ScanTruth, type TrueHole } from './scan.ts';
