/**
 * The only home of inches, points and pixels. Everything else in the program is millimetres.
 * International inch of 1959: exactly 25.4 mm; PostScript point: 1/72 inch.
 */
export const MM_PER_INCH = 25.4;
export const MM_PER_POINT = MM_PER_INCH / 72;

export const mmToPoints = (mm: number): number => mm / MM_PER_POINT;

export const pointsToMm = (points: number): number => points * MM_PER_POINT;

export const mmToInches = (mm: number): number => mm / MM_PER_INCH;

export const inchesToMm = (inches: number): number => inches * MM_PER_INCH;

/** Millimetres covered by one picture pixel at `dpi` dots an inch. */
export const mmPerPixel = (dpi: number): number => MM_PER_INCH / dpi;
