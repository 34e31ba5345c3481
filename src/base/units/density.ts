import { MM_PER_INCH } from './length.ts';

/** Dots an inch to pixels a metre, the only unit of length in a PNG file (pHYs, ISO/IEC 15948, 11.3.4.3). */
export const dpiToPixelsPerMetre = (dpi: number): number => (dpi * 1000) / MM_PER_INCH;

export const pixelsPerMetreToDpi = (pixels: number): number => (pixels * MM_PER_INCH) / 1000;

/** Dots a centimetre, unit 2 of a JFIF file (ITU-T T.871, 10.1) and 3 of a TIFF file (ResolutionUnit), to dots an inch. */
export const dotsPerCmToDpi = (dots: number): number => (dots * MM_PER_INCH) / 10;
