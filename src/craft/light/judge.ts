import { type Camera, stretchAt, toPixel } from '#base/fit/camera.ts';
import { boxHolds, boxOf, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import type { GreyPicture } from '#base/picture/grey.ts';
import { type Progress, silent } from '#base/progress.ts';
import { done, failed, type Result } from '#base/result.ts';
import { type Attempt, attempt, WAYS } from './attempt.ts';
import { type Hole, holesAt } from './holes.ts';
import type { Judgement, LightNote, LightTrouble, PinVerdict } from './judgement.ts';
import { leaningZones } from './lean.ts';
import { type Match, targetOf } from './match.ts';
import { aspectOf, directionOf, leanOf } from './shape.ts';
import { isHidden } from './unseen.ts';
import { BLURRED, triedIn, whyNot } from './why-not.ts';

export interface JudgeOptions {
  /** Thickness of the card, mm; without it no lean is told. */
  readonly cardThickness?: number;
  readonly progress?: Progress;
}

/** A hole further from its pin than this is off centre, mm. Common practice, no source. */
export const OFF_CENTRE = 0.16;
/** A hole with a longest diameter so many times its shortest is oval. Common practice, no source. */
export const OVAL = 1.21;
/** A hole so many times as wide as most is too large. */
export const LARGE = 1.45;

/** No pattern of fewer pins can be told from chance. */
const FEWEST_PINS = 8;

/**
 * Judges a photo of a pricked card against its pattern (places in mm): what is wrong with the hole at each pin, and
 * which holes the pattern does not have. The card may lie any way, either side up, tilted, at any scale; holes may
 * shine on a dark card or be dark on a light one. Where photo and pattern cannot be brought together, says why instead.
 */
export function judgeCard(
  picture: GreyPicture,
  pins: readonly Point[],
  { cardThickness, progress = silent }: JudgeOptions = {},
): Result<Judgement, LightTrouble> {
  if (pins.length < FEWEST_PINS) return failed({ kind: 'light-few-pins', pins: pins.length });
  const target = targetOf(pins);
  const tries: Attempt[] = [];
  for (const [step, { holes, factor }] of WAYS.entries()) {
    progress('looking for holes', step / WAYS.length);
    if (factor > 1 && Math.min(picture.width, picture.height) < 400 * factor) continue;
    const tried = attempt(picture, target, holes, factor);
    tries.push(tried);
    progress('matching holes and pins', (step + 0.5) / WAYS.length);
    if (tried.match === null) continue;
    const judgement = verdicts(picture, pins, tried, tried.match, cardThickness);
    const poor = poorness(judgement);
    const isBlurred = tried.found.softness > BLURRED;
    if (poor === null && isBlurred && judgement.missing.length > 3 + 0.03 * pins.length) {
      return failed({ kind: 'light-blurred', tried: triedIn(tries) });
    }
    if (poor === null) return done(judgement);
    tried.poor = poor;
  }
  return failed(whyNot(tries, pins.length));
}

/** Extra holes are looked for this far round the pattern, mm; what lies beyond may be another card's. */
const ROUND_ABOUT = 5;

function verdicts(
  picture: GreyPicture,
  pins: readonly Point[],
  { found, holes }: Attempt,
  { camera, otherWays, pairs }: Match,
  cardThickness: number | undefined,
): Judgement {
  const isBlurred = found.softness > BLURRED;
  const { at, left, diameter } = holesAt(found.spots, pins, camera);
  const list = pins.map((pin, index): PinVerdict => {
    const hole = at[index]!;
    if (hole !== null)
      return judged(index, pin, hole, diameter, isBlurred ? Number.POSITIVE_INFINITY : OVAL, cardThickness);
    const hidden = isHidden(
      picture,
      toPixel(camera, pin),
      pixelsAt(camera, pin) * diameter,
      holes,
      found.amplitude,
    );
    return { index, verdict: hidden ? 'unseen' : 'missing', ...nothing };
  });
  const about = growBox(boxOf(pins), ROUND_ABOUT);
  const dim = 0.35 * found.amplitude;
  const extra = left.filter(
    (hole) => boxHolds(about, hole) && hole.spot.amplitude >= dim && hole.diameter < WIDEST * diameter,
  );
  const others = left.filter((hole) => !boxHolds(about, hole)).length;
  const having = (verdict: PinVerdict['verdict']): number[] =>
    list.filter((pin) => pin.verdict === verdict).map(({ index }) => index);
  const middle = middleOf(pins);
  const unseen = having('unseen');
  const equal = otherWays.filter(({ cost }) => cost < AS_GOOD);
  const notes: LightNote[] = [];
  if (holes === 'dark') notes.push({ kind: 'dark-holes' });
  if (isBlurred) notes.push({ kind: 'blurred' });
  if (equal[0]) {
    const { turn, mirrored } = equal[0];
    notes.push({ kind: 'ambiguous', ways: equal.length, turn: (turn * 180) / Math.PI, mirrored });
  }
  if (unseen.length > 0) notes.push({ kind: 'unseen', pins: unseen.length });
  if (others >= 5) notes.push({ kind: 'other-holes', count: others });
  if (found.diameter < 4) notes.push({ kind: 'coarse-picture', pixels: found.diameter });
  return {
    missing: having('missing'),
    extra: extra.map((hole) => ({ x: hole.x, y: hole.y, diameter: hole.diameter })),
    offCentre: having('off-centre'),
    oval: having('oval'),
    large: having('large'),
    unseen,
    pins: list,
    zones: isBlurred ? [] : leaningZones(pins, at, picture, cardThickness),
    fit: {
      camera,
      pairs: pairs.length,
      rms: rmsOf(list),
      mirrored: isMirrored(camera, middle),
      pixelsPerMm: pixelsAt(camera, middle),
      holeDiameter: diameter,
      holes,
    },
    notes,
  };
}

/** What is so many times as wide as most holes is no hole: light past the edge of the card, or a tear. */
const WIDEST = 2;

/** Ways that leave no more than so much more unexplained are as good as the one that was taken. */
const AS_GOOD = 1.5;

const nothing = { dx: null, dy: null, aspect: null, angle: null, lean: null, diameter: null } as const;

function judged(
  index: number,
  pin: Point,
  hole: Hole,
  usual: number,
  oval: number,
  cardThickness: number | undefined,
): PinVerdict {
  const [dx, dy] = [hole.x - pin.x, hole.y - pin.y];
  const aspect = aspectOf(hole.shape);
  const isOval = aspect > oval;
  const verdict =
    Math.hypot(dx, dy) > OFF_CENTRE
      ? 'off-centre'
      : isOval
        ? 'oval'
        : hole.diameter > LARGE * usual
          ? 'large'
          : 'good';
  return {
    index,
    verdict,
    dx,
    dy,
    aspect,
    angle: (directionOf(hole.shape) * 180) / Math.PI,
    lean: isOval && cardThickness ? leanOf(hole.diameter, aspect, cardThickness) : null,
    diameter: hole.diameter,
  };
}

function rmsOf(list: readonly PinVerdict[]): number {
  const inPlace = list.filter(({ verdict, dx }) => dx !== null && verdict !== 'off-centre');
  const squares = inPlace.reduce((sum, { dx, dy }) => sum + dx! ** 2 + dy! ** 2, 0);
  return Math.sqrt(squares / (2 * Math.max(1, inPlace.length)));
}

function pixelsAt(camera: Camera, place: Point): number {
  const [a, b, c, d] = stretchAt(camera, place);
  return Math.sqrt(Math.abs(a * d - b * c));
}

function isMirrored(camera: Camera, place: Point): boolean {
  const [a, b, c, d] = stretchAt(camera, place);
  return a * d - b * c < 0;
}

const middleOf = (pins: readonly Point[]): Point => {
  const box = boxOf(pins);
  return { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
};

/** Whether so much is left over on both sides that the pattern is hardly the card's own. */
function poorness({
  missing,
  extra,
  pins,
  unseen,
  offCentre,
}: Judgement): { missing: number; extra: number } | null {
  const seen = pins.length - unseen.length;
  const present = seen - missing.length;
  const poor =
    present < 0.4 * seen ||
    present < 6 ||
    extra.length > 0.15 * present + 3 ||
    offCentre.length > 0.5 * present;
  return poor ? { missing: missing.length, extra: extra.length } : null;
}
