import { type Affine, applyAffine } from '#base/geometry/affine.ts';
import { add, cross, type Point, subtract, unit } from '#base/geometry/point.ts';
import { done, failed, type Result } from '#base/result.ts';
import { mapAnchors } from '#pattern/anchors.ts';
import type { Anchor, Pattern } from '#pattern/pattern.ts';
import { pinsById } from '#pattern/pins.ts';
import { motifsOf } from './motifs.ts';
import type { ArrangeTrouble } from './trouble.ts';

/**
 * The ground brought from one angle to the footside to another, both radians: its footside pins stay, and every other
 * place goes nearer to the footside or further from it by tan(to) / tan(from). Motifs (`motifs.ts`) are not pressed:
 * each keeps its shape and goes as its middle does, so that lines between ground and motif still join the same pins.
 * The picture of the paper stays where it was, and the pins keep in mind where they stood on it.
 * Throws where an angle is not between 0 and a right angle.
 */
export function reangleGround(pattern: Pattern, from: number, to: number): Result<Pattern, ArrangeTrouble> {
  for (const angle of [from, to]) {
    if (!(angle > 0 && angle < Math.PI / 2)) throw new RangeError(`reangleGround: angle is ${angle}`);
  }
  const footside = footsideOf(pattern);
  if (!footside.ok) return footside;
  const { through, direction, pins } = footside.value;
  const press = pressed(through, direction, Math.tan(to) / Math.tan(from));

  const shiftOf = new Map<string | Point, Point>();
  for (const motif of motifsOf(pattern, pins)) {
    const shift = subtract(applyAffine(press, motif.middle), motif.middle);
    for (const part of [...motif.pins, ...motif.places]) shiftOf.set(part, shift);
  }
  const carried = (place: Point, motifPart: string | Point): Point => {
    const shift = shiftOf.get(motifPart);
    return shift ? add(place, shift) : applyAffine(press, place);
  };
  const carry = (anchor: Anchor): Anchor => ('pin' in anchor ? anchor : carried(anchor, anchor));
  const { recipe: _, sheet: __, ...kept } = pattern;
  return done({
    ...kept,
    pins: pattern.pins.map((pin) => ({ ...pin, ...carried(pin, pin.id) })),
    marks: pattern.marks.map((mark) => mapAnchors(mark, carry)),
    areas: pattern.areas.map((area) => ({ ...area, outline: area.outline.map(carry) })),
    ...(pattern.repeat && {
      repeat: { ...pattern.repeat, step: applyAffine({ ...press, e: 0, f: 0 }, pattern.repeat.step) },
    }),
    ...(pattern.paper && { paper: { ...pattern.paper, stood: stoodOf(pattern, pattern.paper) } }),
  });
}

interface Footside {
  readonly through: Point;
  /** Of length 1. */
  readonly direction: Point;
  readonly pins: ReadonlySet<string>;
}

function footsideOf(pattern: Pattern): Result<Footside, ArrangeTrouble> {
  const byId = pinsById(pattern);
  const runs = pattern.runs.filter(({ role, shape }) => role === 'footside' && shape === 'line');
  const ends = runs.map(({ pins }) => [byId.get(pins[0]!)!, byId.get(pins.at(-1)!)!] as const);
  const [first] = ends;
  if (!first) return failed({ kind: 'no-footside' });
  const direction = unit(subtract(first[1], first[0]));
  const turns = ends.some(([from, to]) => Math.abs(cross(direction, unit(subtract(to, from)))) > PARALLEL);
  if (turns) return failed({ kind: 'footside-turns' });
  return done({ through: first[0], direction, pins: new Set(runs.flatMap(({ pins }) => pins)) });
}

/** The map that leaves a line as it is and stretches all that is across it, by `factor`. */
function pressed({ x, y }: Point, along: Point, factor: number): Affine {
  const more = factor - 1;
  const [nx, ny] = [-along.y, along.x];
  const [a, b, d] = [1 + more * nx * nx, more * nx * ny, 1 + more * ny * ny];
  return { a, b, c: b, d, e: x - a * x - b * y, f: y - b * x - d * y };
}

function stoodOf({ pins }: Pattern, { stood }: NonNullable<Pattern['paper']>): Record<string, Point> {
  return { ...Object.fromEntries(pins.map(({ id, x, y }) => [id, { x, y }])), ...stood };
}

/** Footsides are parallel within about half a degree, so that one that a hand drew passes. Our own choice. */
const PARALLEL = 0.01;
