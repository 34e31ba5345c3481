import { ArcLength } from '#base/geometry/arc-length.ts';
import { cubicChain } from '#base/geometry/cubic-chain.ts';
import { leftOf } from '#base/geometry/motion.ts';
import { add, length, type Point, scale } from '#base/geometry/point.ts';
import { splineThrough } from '#base/geometry/spline.ts';
import { done, failed, type Result } from '#base/result.ts';
import type { Plait } from '#pattern/recipe/tape.ts';
import type { Drafting } from '../drafting.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';
import type { Placed } from './placed.ts';
import { type Pins, snapped } from './snap.ts';

/** Picots stand at least so far from other pins, mm: room for two holes and the card between them. */
const PICOT_ROOM = 2 * LEAST_SPACING;

/** A plait from pin to pin, with picots along it on alternate sides, each with a pin of its own. */
export function layPlait(
  drafting: Drafting,
  placed: Placed,
  pins: Pins,
  plait: Plait,
  through: readonly Point[],
  figure: string,
  id: string,
): Result<null, DraftTrouble> {
  const last = through.length - 1;
  const from = snapped(pins, through[0]!, `${figure}.through.0`);
  if (!from.ok) return from;
  const to = snapped(pins, through[last]!, `${figure}.through.${last}`);
  if (!to.ok) return to;
  if (from.value === to.value) return failed({ ...noPlait(figure), given: 0 });
  const between = through.slice(1, -1);
  const way = [drafting.placeOf(from.value), ...between, drafting.placeOf(to.value)];
  const picots = picotPlaces(way, plait);
  if (picots.some(({ place }) => placed.nearest(place, PICOT_ROOM) !== null) || tooNear(picots)) {
    return failed(tooMany(plait, way, placed, figure));
  }
  drafting.mark({ id, kind: 'plait', path: [{ pin: from.value }, ...between, { pin: to.value }] });
  picots.forEach(({ place, side }, k) => {
    const pin = drafting.pin(`${id}.${k + 1}`, place);
    placed.add(pin, place);
    drafting.mark({ id: `${pin}.picot`, kind: 'picot', at: { pin }, side });
  });
  return done(null);
}

interface Picot {
  readonly place: Point;
  /** Towards which side of the sheet its loop turns. */
  readonly side: 'left' | 'right';
}

function picotPlaces(way: readonly Point[], { picots, loop }: Pick<Plait, 'picots' | 'loop'>): Picot[] {
  if (picots === 0) return [];
  const curve = cubicChain(splineThrough(way));
  const along = new ArcLength((t) => length(curve.motionAt(t).velocity), 0, curve.spans, 4 * curve.spans);
  return Array.from({ length: picots }, (_, k) => {
    const motion = curve.motionAt(along.parameterAt(((k + 1) / (picots + 1)) * along.total));
    const out = scale(leftOf(motion), k % 2 === 0 ? loop : -loop);
    return { place: add(motion.place, out), side: out.x < 0 ? 'left' : 'right' };
  });
}

const tooNear = (picots: readonly Picot[]): boolean =>
  picots.some(({ place }, k) =>
    picots
      .slice(k + 1)
      .some(({ place: other }) => Math.hypot(other.x - place.x, other.y - place.y) < PICOT_ROOM),
  );

/** The most picots, fewer than wanted, that find room. */
function tooMany(plait: Plait, way: readonly Point[], placed: Placed, figure: string): DraftTrouble {
  let most = plait.picots - 1;
  const fits = (picots: number): boolean => {
    const places = picotPlaces(way, { ...plait, picots });
    return !tooNear(places) && places.every(({ place }) => placed.nearest(place, PICOT_ROOM) === null);
  };
  while (most > 0 && !fits(most)) most--;
  return {
    kind: 'recipe-figure',
    figure: `${figure}.picots`,
    given: plait.picots,
    unit: 'count',
    most,
    nearest: most,
    why: 'pins-too-close',
  };
}

const noPlait = (figure: string) =>
  ({ kind: 'recipe-figure', figure: `${figure}.through`, unit: 'mm', why: 'does-not-fit' }) as const;
