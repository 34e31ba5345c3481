import { median } from '#base/fit/robust.ts';
import type { PixelPoint } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { groundOf, hasInk } from '#base/picture/ground.ts';
import { inkRegions, type Region, type Regions } from '#base/picture/regions.ts';
import { clustersIn, twinCentres } from './split.ts';

/** A small patch that differs from the card round it, and may be a hole; lengths in pixels. */
export interface Spot extends PixelPoint {
  /** Pixels at or over half the light of the spot. */
  readonly area: number;
  /** Second moments about its centre, pixels squared. */
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  /** Grey of the card round it less that of the spot. */
  readonly amplitude: number;
  /** Pixels between a quarter and three quarters of its light, beside those over half: 0 for a sharp edge, 1.6 for a blur. */
  readonly softness: number;
}

/** What was found in a picture: spots of the size of a hole, and how many were put aside as too large or too long. */
export interface Spots {
  readonly spots: readonly Spot[];
  /** Diameter of most of them, pixels; 0 where there are none. */
  readonly diameter: number;
  /** Grey by which most of them differ from the card. */
  readonly amplitude: number;
  /** How soft the edges of most are: see `Spot`. */
  readonly softness: number;
}

export const diameterOf = ({ area }: { readonly area: number }): number => 2 * Math.sqrt(area / Math.PI);

/** The share of the way from card to light from which a pixel counts as lit: low, for the sake of dim holes. */
const LIT_SHARE = 0.3;
/** A hole takes no more than this share of the picture. */
const LARGEST_SHARE = 5e-3;
const SMALLEST_AREA = 4;

/**
 * Finds spots darker than what lies round them (the picture of holes that shine is inverted first), each measured at
 * sub-pixel precision against its own surroundings. What shines round the edge of a card, glare and scratches are
 * too large or too long to be among them; dust is.
 */
export function findSpots(picture: GreyPicture): Spots {
  const ground = groundOf(picture);
  if (!hasInk(ground)) return { spots: [], diameter: 0, amplitude: 0, softness: 0 };
  const patches = inkRegions(picture, ground, LIT_SHARE);
  const most = Math.max(400, LARGEST_SHARE * picture.width * picture.height);
  const alone: { readonly spot: Spot; readonly index: number }[] = [];
  const tangled: number[] = [];
  patches.regions.forEach((region, index) => {
    if (region.area < SMALLEST_AREA || !isInside(region, picture)) return;
    const spot = region.area <= most && isCompact(region) ? measure(picture, patches, index, null) : null;
    if (spot !== null) alone.push({ spot, index });
    else if (boxArea(region) < MOST_TANGLED) tangled.push(index);
  });
  const size = usualArea(alone.map(({ spot }) => spot));
  const amplitude = median(alone.map(({ spot }) => spot.amplitude));
  const parted = (index: number, own: number): Spot[] => {
    const centres = clustersIn(picture, patches, index, own, size);
    if (centres.length < 2) return [];
    return centres.flatMap((_, which) => measure(picture, patches, index, { centres, which }) ?? []);
  };
  const spots = alone.flatMap(({ spot, index }) => {
    const parts = spot.area < 1.4 * size ? [] : parted(index, spot.amplitude);
    if (parts.length > 0) return parts;
    if (spot.area < 1.5 * size || elongation(spot) < 1.7) return [spot];
    const centres = twinCentres(spot);
    return centres.flatMap((_, which) => measure(picture, patches, index, { centres, which }) ?? []);
  });
  for (const index of tangled) {
    const { area } = patches.regions[index]!;
    if (size > 0 && area > 1.4 * size && area < 60 * size) spots.push(...parted(index, amplitude));
  }
  return {
    spots: spots.filter((spot) => elongation(spot) < 3.2),
    diameter: diameterOf({ area: size }),
    amplitude: amplitude || 0,
    softness: median(alone.flatMap(({ spot }) => (spot.area > size / 2 ? [spot.softness] : []))) || 0,
  };
}

/** Holes that run together are parted while their box has no more pixels than this. */
const MOST_TANGLED = 120_000;

const boxArea = ({ left, right, top, bottom }: Region): number => (right - left + 1) * (bottom - top + 1);

const isCompact = ({ left, right, top, bottom, area }: Region): boolean => {
  const width = right - left + 1;
  const height = bottom - top + 1;
  return area > 0.3 * width * height && Math.max(width, height) < 4 * Math.min(width, height) + 2;
};

/** A patch that the picture's edge cuts through cannot be measured. */
const isInside = ({ left, right, top, bottom }: Region, { width, height }: GreyPicture): boolean =>
  left > 1 && top > 1 && right < width - 2 && bottom < height - 2;

function elongation({ xx, xy, yy }: Spot): number {
  const half = (xx + yy) / 2;
  const off = Math.hypot((xx - yy) / 2, xy);
  return Math.sqrt((half + off) / Math.max(1e-9, half - off));
}

/** Sizes that differ by no more than this, up or down, count as alike when the usual size is looked for. */
const ALIKE = 1.6;

/** The area of a usual hole: that which most spots share; a larger one counts for more, for there may be much dust. */
function usualArea(spots: readonly Spot[]): number {
  const areas = Float64Array.from(spots, ({ area }) => area).sort();
  const sums = new Float64Array(areas.length + 1);
  for (let k = 0; k < areas.length; k++) sums[k + 1] = sums[k]! + Math.sqrt(areas[k]!);
  let [best, most, from, to] = [0, 0, 0, 0];
  for (const area of areas) {
    while (areas[from]! < area / ALIKE) from++;
    while (to < areas.length && areas[to]! <= area * ALIKE) to++;
    const weight = sums[to]! - sums[from]!;
    if (weight <= most) continue;
    most = weight;
    best = areas[(from + to) >> 1]!;
  }
  return best;
}

/** Light is taken from none to all between these shares of the way up: it steepens a blurred edge and drops grain. */
const DARK = 0.35;
const FULL = 0.9;

/**
 * Measures one patch: centre and moments weighted by its light. With `part`, only the pixels nearer to that centre
 * than to the others.
 */
function measure(
  { width, height, grey }: GreyPicture,
  patches: Regions,
  index: number,
  part: { readonly centres: readonly PixelPoint[]; readonly which: number } | null,
): Spot | null {
  const region = patches.regions[index]!;
  const pad = 2;
  const left = Math.max(0, region.left - pad);
  const right = Math.min(width - 1, region.right + pad);
  const top = Math.max(0, region.top - pad);
  const bottom = Math.min(height - 1, region.bottom + pad);
  const rim = rimGreys(width, height, grey, region, 3);
  const card = rim[Math.floor(0.6 * rim.length)]!;
  const light = innerGrey(width, grey, patches, index, region);
  const amplitude = card - light;
  if (
    amplitude < 8 ||
    shareUnder(rimGreys(width, height, grey, region, 2), (card + light) / 2) > MOST_LIT_RIM
  )
    return null;
  let [sum, sumX, sumY, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  let [edge, core] = [0, 0];
  const [middleX, middleY] = [(left + right) / 2, (top + bottom) / 2];
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const share = (card - grey[row * width + column]!) / amplitude;
      if (share <= 0.25) continue;
      const owner = patches.at(column, row);
      if (owner >= 0 && owner !== index) continue;
      if (part !== null && nearestOf(part.centres, column, row) !== part.which) continue;
      if (share < 0.75) edge++;
      if (share > 0.5) core++;
      if (share <= DARK) continue;
      const weight = Math.min(1, (share - DARK) / (FULL - DARK));
      const [x, y] = [column - middleX, row - middleY];
      sum += weight;
      sumX += weight * x;
      sumY += weight * y;
      xx += weight * x * x;
      xy += weight * x * y;
      yy += weight * y * y;
    }
  }
  if (sum < 2) return null;
  const [x, y] = [sumX / sum, sumY / sum];
  return {
    column: middleX + x,
    row: middleY + y,
    area: sum,
    xx: xx / sum - x * x,
    xy: xy / sum - x * y,
    yy: yy / sum - y * y,
    amplitude,
    softness: edge / Math.max(1, core),
  };
}

function nearestOf(centres: readonly PixelPoint[], column: number, row: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  centres.forEach((centre, which) => {
    const away = (centre.column - column) ** 2 + (centre.row - row) ** 2;
    if (away >= least) return;
    least = away;
    best = which;
  });
  return best;
}

/** Where more of the frame round a patch is lit than this, it is no hole: a piece of the light past the card's edge. */
const MOST_LIT_RIM = 0.4;

/**
 * Greys of a frame round a patch, `pad` pixels from it, sorted. That of the card lies well up among them, for neighbours may reach into the
 * frame.
 */
function rimGreys(width: number, height: number, grey: Uint8Array, region: Region, pad: number): number[] {
  const left = Math.max(0, region.left - pad);
  const right = Math.min(width - 1, region.right + pad);
  const top = Math.max(0, region.top - pad);
  const bottom = Math.min(height - 1, region.bottom + pad);
  const greys: number[] = [];
  for (let column = left; column <= right; column++) {
    greys.push(grey[top * width + column]!, grey[bottom * width + column]!);
  }
  for (let row = top + 1; row < bottom; row++) {
    greys.push(grey[row * width + left]!, grey[row * width + right]!);
  }
  return greys.sort((one, other) => one - other);
}

const shareUnder = (sorted: readonly number[], level: number): number =>
  sorted.filter((value) => value < level).length / sorted.length;

/** Grey of the light in a patch: the mean of its strongest fifth, so that grain does not decide. */
function innerGrey(width: number, grey: Uint8Array, patches: Regions, index: number, region: Region): number {
  const samples: number[] = [];
  for (let row = region.top; row <= region.bottom; row++) {
    for (let column = region.left; column <= region.right; column++) {
      if (patches.at(column, row) === index) samples.push(grey[row * width + column]!);
    }
  }
  samples.sort((one, other) => one - other);
  const count = Math.max(1, Math.round(0.2 * samples.length));
  let sum = 0;
  for (let k = 0; k < count; k++) sum += samples[k]!;
  return sum / count;
}
