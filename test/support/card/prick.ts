import { boxOf, growBox } from '#base/geometry/box.ts';
import type { Point } from '#base/geometry/point.ts';
import { PointIndex } from '#base/geometry/point-index.ts';
import { normal, type Random } from '#base/random.ts';
import type { CardSettings } from './options.ts';

/** A hole as the needle made it. */
export interface PrickedHole extends Point {
  readonly diameter: number;
  readonly aspect: number;
  /** Of the longest diameter, radians. */
  readonly angle: number;
}

export interface PrickedCard {
  /** The hole at each pin; null where it was missed. */
  readonly holes: readonly (PrickedHole | null)[];
  readonly extra: readonly PrickedHole[];
  readonly faults: {
    readonly missing: readonly number[];
    readonly offCentre: readonly number[];
    readonly oval: readonly number[];
  };
}

/** Pricks a card as a hand does, with faults drawn by chance, at most one a hole. */
export function prick(pins: readonly Point[], settings: CardSettings, random: Random): PrickedCard {
  const order = shuffled(pins.length, random);
  const { missing, offCentre, oval, extra } = settings.faults;
  const faults = {
    missing: order.slice(0, missing),
    offCentre: order.slice(missing, missing + offCentre),
    oval: order.slice(missing + offCentre, missing + offCentre + oval),
  };
  const kindOf = new Map<number, 'missing' | 'offCentre' | 'oval'>();
  for (const kind of ['missing', 'offCentre', 'oval'] as const) {
    for (const index of faults[kind]) kindOf.set(index, kind);
  }
  const box = boxOf(pins);
  const lower = settings.leanBelow === 0 ? Infinity : box.top + (2 * (box.bottom - box.top)) / 3;
  const holes = pins.map((pin, index): PrickedHole | null => {
    const kind = kindOf.get(index);
    if (kind === 'missing') return null;
    const angle = Math.PI * random();
    const diameter = settings.hole * Math.max(0.78, Math.min(1.22, 1 + 0.07 * normal(random)));
    const aspect =
      kind === 'oval' ? 1.25 + 0.55 * random() : 1 + Math.min(0.09, Math.abs(0.035 * normal(random)));
    const hole = { ...strayed(pin, kind === 'offCentre', settings.sigma, random), diameter, aspect, angle };
    return pin.y > lower && kind === undefined ? leaning(hole, settings) : hole;
  });
  return { holes, extra: extraHoles(pins, extra, settings, random), faults };
}

/** Through card of thickness t a needle that leans by a smears the hole by t tan a, and half of that off its place. */
function leaning(hole: PrickedHole, { leanBelow, thickness }: CardSettings): PrickedHole {
  const smear = thickness * Math.tan((leanBelow * Math.PI) / 180);
  const aspect = 1 + smear / hole.diameter;
  return { x: hole.x + smear / 2, y: hole.y, diameter: hole.diameter * Math.sqrt(aspect), aspect, angle: 0 };
}

function strayed({ x, y }: Point, far: boolean, sigma: number, random: Random): Point {
  if (far) {
    const [away, angle] = [0.2 + 0.3 * random(), 2 * Math.PI * random()];
    return { x: x + away * Math.cos(angle), y: y + away * Math.sin(angle) };
  }
  const [dx, dy] = [sigma * normal(random), sigma * normal(random)];
  const shrink = Math.min(1, 0.12 / Math.hypot(dx, dy));
  return { x: x + dx * shrink, y: y + dy * shrink };
}

function extraHoles(
  pins: readonly Point[],
  count: number,
  { hole }: CardSettings,
  random: Random,
): PrickedHole[] {
  const box = growBox(boxOf(pins), 2);
  const index = new PointIndex(pins);
  const found: PrickedHole[] = [];
  for (let tries = 0; found.length < count && tries < 1000; tries++) {
    const place = {
      x: box.left + (box.right - box.left) * random(),
      y: box.top + (box.bottom - box.top) * random(),
    };
    const near = found.some((other) => Math.hypot(other.x - place.x, other.y - place.y) < 1.5);
    if (near || index.within(place, 0.75).length > 0) continue;
    found.push({ ...place, diameter: hole, aspect: 1.03, angle: Math.PI * random() });
  }
  return found;
}

function shuffled(count: number, random: Random): number[] {
  const order = Array.from({ length: count }, (_, k) => k);
  for (let k = count - 1; k > 0; k--) {
    const other = Math.floor(random() * (k + 1));
    [order[k], order[other]] = [order[other]!, order[k]!];
  }
  return order;
}
