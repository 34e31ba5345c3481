import type { Point } from '#base/geometry/point.ts';
import type { MatRecipe } from '#pattern/recipe/mat.ts';
import type { Drafting } from '../drafting.ts';
import { radiusOfChord } from '../ring/bend.ts';
import { type DraftTrouble, LEAST_SPACING } from '../trouble.ts';

/** The middle of a mat: its pins, and the pairs that run to them from the innermost ring `ring` of the ground. */
export function draftCentre(drafting: Drafting, { centre }: MatRecipe, ring: readonly string[]): void {
  switch (centre.kind) {
    case 'open':
      return;
    case 'pin': {
      drafting.pin('c', { x: 0, y: 0 });
      for (const pin of ring) join(drafting, pin, 'c');
      return;
    }
    case 'ring':
      draftRing(drafting, centre, ring);
  }
}

function draftRing(drafting: Drafting, centre: SmallRing, ring: readonly string[]): void {
  const { pins: count, radius, stitch, tint } = centre;
  const each = ring.length / count;
  const pins = Array.from({ length: count }, (_, k) => {
    // In the middle of the pins whose pairs it takes.
    const turn = (k * each + (each - 1) / 2) / ring.length;
    return drafting.pin(`c${k}`, onCircle(radius, turn));
  });
  drafting.run({ id: 'centre', pins, shape: 'curve', closed: true, role: 'outline', even: true });
  drafting.area({
    id: 'centre',
    outline: pins.map((pin) => ({ pin })),
    stitch,
    ...(tint === undefined ? {} : { tint }),
  });
  ring.forEach((pin, k) => {
    join(drafting, pin, pins[Math.floor(k / each)]!);
  });
}

type SmallRing = Extract<MatRecipe['centre'], { kind: 'ring' }>;

/** A place on a circle, turns clockwise from its top, where the rounds of a mat begin. */
const onCircle = (radius: number, turns: number): Point => ({
  x: radius * Math.sin(2 * Math.PI * turns),
  y: -radius * Math.cos(2 * Math.PI * turns),
});

function join(drafting: Drafting, from: string, to: string): void {
  drafting.mark({ id: `${from}-${to}`, kind: 'line', from: { pin: from }, to: { pin: to } });
}

/** What keeps the middle from fitting into the innermost ring. */
export function centreTrouble({ centre, sectors, spacing }: MatRecipe): DraftTrouble | null {
  if (centre.kind !== 'ring') return null;
  const { pins, radius } = centre;
  if (sectors % pins !== 0) {
    const parts = Array.from({ length: sectors }, (_, k) => k + 1).filter((k) => k >= 3 && sectors % k === 0);
    const nearest = parts.reduce((best, k) => (Math.abs(k - pins) < Math.abs(best - pins) ? k : best));
    const why = 'repeat-does-not-divide';
    return { kind: 'recipe-figure', figure: 'centre.pins', given: pins, unit: 'count', why, nearest };
  }
  const least = roundedUp(radiusOfChord(LEAST_SPACING, (2 * Math.PI) / pins));
  const most = roundedDown(radiusOfChord(spacing, (2 * Math.PI) / sectors) - LEAST_SPACING);
  if (radius >= least && radius <= most) return null;
  const nearest = least > most ? {} : { nearest: Math.min(most, Math.max(least, radius)) };
  const why = radius < least ? 'pins-too-close' : 'does-not-fit';
  return {
    kind: 'recipe-figure',
    figure: 'centre.radius',
    given: radius,
    unit: 'mm',
    why,
    least,
    most,
    ...nearest,
  };
}

const roundedUp = (value: number): number => Math.ceil(value * 1000) / 1000;
const roundedDown = (value: number): number => Math.floor(value * 1000) / 1000;
