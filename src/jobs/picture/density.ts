import ExifReader from 'exifreader';
import { dotsPerCmToDpi, pixelsPerMetreToDpi } from '#base/units/density.ts';

/** One statement of scale found in a file: dots an inch across and down the stored picture. */
export interface Density {
  readonly across: number;
  readonly down: number;
  /** How far a true value may lie from the stated one, because its unit takes only whole numbers. */
  readonly rounding: number;
}

/** All that a file's headers say about scale, and whether a camera took the picture. */
export interface Densities {
  readonly found: readonly Density[];
  readonly byCamera: boolean;
}

/** What tells a camera's picture from a scanner's: a scanner has no lens and no scene to report on. */
const CAMERA_TAGS = [
  'FNumber',
  'FocalLength',
  'ExposureTime',
  'ExposureMode',
  'LensModel',
  'ApertureValue',
  'WhiteBalance',
  'SceneCaptureType',
] as const;

/**
 * Reads the statements of scale in a JPEG, PNG, TIFF or WebP file: JFIF density (ITU-T T.871: unit 1 inch, 2 cm;
 * unit 0 states only a ratio), EXIF and TIFF resolution (unit 2 inch, 3 cm, 1 none), PNG pHYs (unit 1 metre).
 * Damaged headers count as silent ones: the pixels may still be good.
 */
export function densitiesIn(bytes: Uint8Array): Densities {
  const tags = headersOf(bytes);
  if (tags === null) return { found: [], byCamera: false };
  const found = [exifDensity(tags.exif), pngDensity(tags.png), jfifDensity(tags.jfif)];
  return {
    found: found.filter((density) => density !== null),
    byCamera: CAMERA_TAGS.some((tag) => tags.exif?.[tag] !== undefined),
  };
}

type Headers = Readonly<Record<'jfif' | 'exif' | 'png', Group | undefined>>;
type Group = Readonly<Record<string, { readonly value?: unknown } | undefined>>;

function headersOf(bytes: Uint8Array): Headers | null {
  try {
    return ExifReader.load(bytes.slice().buffer, {
      expanded: true,
      includeTags: {
        jfif: true,
        png: true,
        exif: ['XResolution', 'YResolution', 'ResolutionUnit', ...CAMERA_TAGS],
      },
    }) as unknown as Headers;
  } catch {
    return null;
  }
}

/** What one stated dot counts in dots an inch, by JFIF's unit: 1 an inch, 2 a centimetre. */
const DOTS_AN_INCH: Readonly<Record<number, number>> = { 1: 1, 2: dotsPerCmToDpi(1) };

function jfifDensity(jfif: Group | undefined): Density | null {
  const factor = DOTS_AN_INCH[numberIn(jfif?.['Resolution Unit']) ?? 0];
  return density(jfif?.XResolution, jfif?.YResolution, factor);
}

function exifDensity(exif: Group | undefined): Density | null {
  // The unit's default is the inch (TIFF 6.0, ResolutionUnit).
  const unit = numberIn(exif?.ResolutionUnit) ?? 2;
  return density(exif?.XResolution, exif?.YResolution, DOTS_AN_INCH[unit - 1]);
}

function pngDensity(png: Group | undefined): Density | null {
  const factor = numberIn(png?.['Pixel Units']) === 1 ? pixelsPerMetreToDpi(1) : undefined;
  return density(png?.['Pixels Per Unit X'], png?.['Pixels Per Unit Y'], factor);
}

function density(x: Group[string], y: Group[string], factor: number | undefined): Density | null {
  const across = numberIn(x);
  const down = numberIn(y);
  if (factor === undefined || across === null || down === null) return null;
  const isWhole = Number.isInteger(across) && Number.isInteger(down);
  return { across: across * factor, down: down * factor, rounding: isWhole ? factor / 2 : 0 };
}

/** A plain number, or a fraction as EXIF stores it; null for anything else. */
function numberIn(tag: Group[string]): number | null {
  const value = tag?.value;
  const isFraction = Array.isArray(value) && value.length === 2;
  const number = isFraction ? Number(value[0]) / Number(value[1]) : Number(value ?? Number.NaN);
  return Number.isFinite(number) ? number : null;
}
